import { readFileSync } from "node:fs";
import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { groundStitch } from "../../src/cloth/gauge.ts";
import { prepareCord } from "../../src/cord/preparation.ts";
import type { Fit } from "../../src/fit/fit.ts";
import { type RefitResult, type Refitted, refit } from "../../src/refit/refit.ts";
import { standingOf } from "../../src/refit/standing.ts";
import { knit, type SheetPiece } from "../support/bed-simulator.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { fitHere, garmentOf, soundGarment } from "../support/run-garment.ts";
import { sheetPiecesOf } from "../support/sheet-of.ts";

/** Costs are sums of a few products; two ways of adding them differ by far less than this. */
const costTolerance = 1e-6;

const count = 300;

/** What a tape told of a piece, as shares of what was planned, at a share of the piece's rows. */
interface Tape {
  readonly at: number;
  readonly height: number;
  readonly width: number;
}

const tapes = (howMany: number, seed: number): readonly Tape[] => {
  const share = (from: number, to: number) =>
    fc.noBias(fc.integer({ min: from, max: to })).map((n) => n / 100);
  return fc.sample(fc.record({ at: share(1, 98), height: share(94, 106), width: share(94, 106) }), {
    numRuns: howMany,
    seed,
  });
};

interface Measured {
  readonly about: string;
  readonly before: Fit;
  readonly piece: string;
  readonly row: number;
  readonly result: RefitResult;
}

async function measure(before: Fit, piece: string, row: number, tape: Omit<Tape, "at">): Promise<Measured> {
  const stitch = groundStitch(before.garment.gauge);
  const { left, right, neck } = before.pieces.find(({ name }) => name === piece)!;
  const measured = {
    lengthMm: row * stitch.heightMm * tape.height,
    ...((!neck || row <= neck.row) && {
      widthMm: (left[row]! + right[row]!) * stitch.widthMm * tape.width,
    }),
  };
  return {
    about: `${before.garment.title}, ${piece}, row ${row}, ${JSON.stringify(tape)}`,
    before,
    piece,
    row,
    result: await refit(before, { piece, row, measured }, simplexEngine),
  };
}

type Done = Measured & { readonly result: Refitted };

const done = (measured: readonly Measured[]): readonly Done[] =>
  measured.filter((one): one is Done => one.result.status === "refitted");

const rowsOf = (fit: Fit, piece: string): number => fit.pieces.find(({ name }) => name === piece)!.rows;

const asPlanned: Measured[] = [];
const otherwise: Measured[] = [];
const again: Measured[] = [];

beforeAll(async () => {
  const samples = ["sleeve", "front", "scarf", "cable-sleeve"].map((name) =>
    soundGarment(readFileSync(`samples/${name}.yaml`, "utf8")),
  );
  const random = sampleGarments(count, 20261126).map((plain, index) =>
    garmentOf({ ...plain, title: `Garment ${index}` }),
  );
  const meeting = sampleGarments(80, 20261128, { phases: true, sharedPieces: false, motifs: 1 }).map(
    (plain, index) => garmentOf({ ...plain, title: `Garment ${index} that meets its marks` }),
  );
  const garments = [...samples, ...random, ...meeting];
  const along = tapes(garments.length, 7);
  for (const [index, garment] of garments.entries()) {
    const result = await fitHere(garment, { rivals: 0 });
    if (result.status !== "fits") continue;
    for (const { name, rows } of result.fit.pieces) {
      const tape = along[index]!;
      const row = Math.min(rows - 1, Math.max(1, Math.round(rows * tape.at)));
      asPlanned.push(await measure(result.fit, name, row, { height: 1, width: 1 }));
      const first = await measure(result.fit, name, row, tape);
      otherwise.push(first);
      if (first.result.status !== "refitted") continue;
      const higher = Math.round((row + rowsOf(first.result.fit, name)) / 2);
      if (higher <= row || higher >= rowsOf(first.result.fit, name)) continue;
      again.push(await measure(first.result.fit, name, higher, { height: tape.width, width: tape.height }));
    }
  }
});

describe(`pieces of ${count} random garments and of the samples, measured on the way up`, () => {
  test("go on as planned, at the same cost, where they come out as planned", () => {
    for (const { about, before, piece, result } of asPlanned) {
      expect(result.status, about).toBe("refitted");
      if (result.status !== "refitted") continue;
      expect(sheetOf(result.fit, piece), about).toEqual(sheetOf(before, piece));
      expect(Math.abs(result.fit.cost - costOn(before, piece)), about).toBeLessThan(costTolerance);
      expect(result.proven, about).toBe(true);
    }
  });

  test("mostly have a new fit, also when they are measured a second time", () => {
    expect(done(otherwise).length).toBeGreaterThan(otherwise.length / 2);
    expect(done(otherwise).length).toBeLessThan(otherwise.length);
    expect(done(again).length).toBeGreaterThan(again.length / 2);
    for (const { about, result } of [...done(otherwise), ...done(again)])
      expect(result.proven, about).toBe(true);
  });

  test("can be knitted from the new sheet alone, and end as the fit says", () => {
    for (const { about, before, piece: name, row, result } of [...done(otherwise), ...done(again)]) {
      const { fit } = result;
      const piece = fit.pieces[0]!;
      const report = knit(sheetOf(fit, name), {
        bedNeedles: fit.garment.bed.needles,
        carriage: piece.carriage,
        countsAt: countsIn(fit),
      });
      expect(report.violations, about).toEqual([]);
      expect(report.rows, about).toBe(piece.rows);
      expect(report.needlesAtEnd, about).toEqual([]);
      const used = fit.placements.reduce((sum, placed) => sum + (prepareCord(fit, placed)?.used ?? 0), 0);
      expect(report.cordStitches, about).toBe(used);
      expect(
        fit.placements.map(({ index }) => index),
        about,
      ).toEqual(before.placements.filter((placed) => placed.piece === name).map(({ index }) => index));
      expect(row, about).toBeLessThan(piece.rows);
    }
  });

  test("keep what is knitted, stitch by stitch", () => {
    for (const { about, before, piece, row, result } of [...done(otherwise), ...done(again)]) {
      const knitted = (fit: Fit): unknown => sheetOf(fit, piece).rows.filter((one) => one.row <= row);
      expect(knitted(result.fit), about).toEqual(knitted(before));
    }
  });

  test("end whole, inside their margins, above a repeat that is finished as it was begun", () => {
    for (const { about, before, piece, row, result } of [...done(otherwise), ...done(again)]) {
      const counted = result.fit.pieces[0]!;
      for (const placed of result.fit.placements) {
        const { to } = result.fit.garment.placements[placed.index]!;
        const heights = placed.sections.map(({ look, repeats }) => repeats * look.trace.repeatRows);
        const lead = placed.sections[0]!.look.trace.leadRows;
        expect(placed.lastRow - placed.firstRow, about).toBe(heights.reduce((sum, one) => sum + one, lead));
        expect(counted.marks.get(to)! - placed.lastRow, about).toBe(placed.margins.top);
        const was = before.placements.find(({ index }) => index === placed.index)!;
        const standing = standingOf(was, row);
        if (standing)
          expect(placed.sections.slice(0, standing.sections.length), about).toEqual(standing.sections);
        else expect(placed.firstRow, about).toBeGreaterThan(row);
      }
      expect(counted.name).toBe(piece);
    }
  });
});

function sheetOf(fit: Fit, name: string): SheetPiece {
  const pieces = sheetPiecesOf(fit);
  return pieces.find(({ piece }) => piece === name)!;
}

/** What a fit gives up on one piece: its placements' terms, and the looks of the motifs on it. */
function costOn({ terms, placements }: Fit, piece: string): number {
  const own = placements.filter((placed) => placed.piece === piece);
  return terms
    .filter(({ motif, placement }) =>
      own.some((placed) => (placement === undefined ? placed.motif === motif : placed.index === placement)),
    )
    .reduce((sum, { cost }) => sum + cost, 0);
}

/** Hangings of one look are counted alike, wherever on the piece it is worked. */
function countsIn({ placements }: Fit): (placement: number, row: number) => string {
  const looks = [...new Set(placements.flatMap(({ sections }) => sections.map(({ look }) => look)))];
  return (placement, row) => {
    const { sections, firstRow } = placements.find(({ index }) => index === placement - 1)!;
    let end = firstRow + sections[0]!.look.trace.leadRows;
    const section = sections.find(({ look, repeats }) => {
      end += repeats * look.trace.repeatRows;
      return row <= end;
    });
    return `, counts ${looks.indexOf(section!.look)}`;
  };
}
