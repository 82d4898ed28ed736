import { readdirSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { parse } from "yaml";
import { countPiece } from "../../src/cloth/counted-piece.ts";
import { groundStitch } from "../../src/cloth/gauge.ts";
import { prepareCord } from "../../src/cord/preparation.ts";
import { sceneOf } from "../../src/draw/scene.ts";
import { checkFit } from "../../src/fit/check.ts";
import { fieldsOf, stretchOf } from "../../src/fit/field.ts";
import type { Fit } from "../../src/fit/fit.ts";
import type { FitResult } from "../../src/fit/solve.ts";
import type { Garment } from "../../src/garment/garment.ts";
import { type KnitReport, knit } from "../support/bed-simulator.ts";
import { type ExhaustiveOptions, exhaustiveBest } from "../support/exhaustive.ts";
import type { CordEntry, GarmentFile } from "../support/garment-file.ts";
import { laidOver } from "../support/laid-over.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { workingOrder } from "../support/referee/strands.ts";
import { fitHere, garmentOf } from "../support/run-garment.ts";
import { sheetPiecesOf } from "../support/sheet-of.ts";

/** Costs are sums of a few products; two ways of adding them differ by far less than this. */
const costTolerance = 1e-6;

interface Judged {
  readonly about: string;
  readonly plain: GarmentFile;
  readonly garment: Garment;
  readonly result: FitResult;
}

const sampleFiles = readdirSync("samples/motifs").filter((file) => file.endsWith(".yaml"));
const drawnByLot = 300;
const judged: Judged[] = [];

beforeAll(async () => {
  const plains: [string, GarmentFile][] = [
    ...sampleFiles.map((file): [string, GarmentFile] => [
      file,
      parse(readFileSync(`samples/motifs/${file}`, "utf8")) as GarmentFile,
    ]),
    ...sampleGarments(drawnByLot, 20261126, {
      kinds: ["sample", "sample", "sample", "band"],
      placements: [1, 2],
      motifs: 1,
      sharedPieces: false,
    }).map((plain): [string, GarmentFile] => [JSON.stringify(plain), plain]),
  ];
  for (const [about, plain] of plains) {
    const garment = garmentOf(plain);
    judged.push({ about, plain, garment, result: await fitHere(garment, { rivals: 1 }) });
  }
});

const fits = (): (Omit<Judged, "result"> & { readonly all: readonly Fit[] })[] =>
  judged.flatMap(({ result, ...rest }) =>
    result.status === "fits" ? [{ ...rest, all: [result.fit, ...result.rivals] }] : [],
  );

/** The edges that the bed can knit, so that a step which has to wait a row for the carriage decides no verdict. */
function edgesOf(garment: Garment): NonNullable<ExhaustiveOptions["edges"]> {
  const fields = fieldsOf(garment);
  const edges = new Map<string, ReturnType<typeof countPiece>>();
  return (name, change, side, row) => {
    const field = fields.find(({ placement }) => placement.piece === name)!;
    const key = `${name} ${change}`;
    const piece =
      edges.get(key) ??
      countPiece(field.piece, groundStitch(garment.gauge), change === 0 ? [] : [stretchOf(field, change)]);
    edges.set(key, piece);
    return piece[side][row]!;
  };
}

describe(`the samples of motifs and ${drawnByLot} random garments like them`, () => {
  test("cost what an exhaustive search finds, and fit where it finds a fit", () => {
    for (const { about, plain, garment, result } of judged) {
      const referee = exhaustiveBest(plain, { edges: edgesOf(garment) });
      const told = result.status === "fits" ? result.fit.cost : undefined;
      if (referee === undefined || told === undefined) expect(told, about).toBe(referee?.cost);
      else expect(Math.abs(told - referee.cost), about).toBeLessThan(costTolerance);
    }
    // Most of them have a fit, or the comparison would say little; every sample has one.
    expect(fits().length).toBeGreaterThan(judged.length / 2);
    expect(fits().length).toBeLessThan(judged.length);
    expect(fits().filter(({ about }) => sampleFiles.includes(about))).toHaveLength(sampleFiles.length);
  });

  test("pass the independent check, the rivals too", () => {
    for (const { about, garment, all } of fits())
      for (const fit of all) expect(checkFit(garment, fit, fit.cost), about).toEqual([]);
  });

  test("are knitted from their sheets alone, and come out as the fit says", () => {
    for (const { about, garment, all } of fits())
      for (const fit of all)
        for (const report of knitted(garment, fit, about)) {
          const piece = fit.pieces.find(({ name }) => name === report.piece)!;
          const placed = fit.placements.filter((placement) => placement.piece === piece.name);
          expect(report.rows, about).toBe(piece.rows);
          expect(report.needlesAtEnd, about).toEqual([]);
          const used = placed.reduce((sum, placement) => sum + (prepareCord(fit, placement)?.used ?? 0), 0);
          expect(report.cordStitches, about).toBe(used);
          for (const { from, to } of report.ladders)
            expect([from, to], about).toEqual([placed[0]!.firstRow, placed[0]!.lastRow]);
          for (const { firstRow, lastRow, repeats } of report.patterns)
            expect({ firstRow, lastRow, repeats }, about).toEqual({
              firstRow: placed[0]!.firstRow,
              lastRow: placed[0]!.lastRow,
              repeats: placed[0]!.repeats,
            });
        }
  });

  test("are hung in each row in the order that the file asks for", () => {
    for (const { about, plain, garment, all } of fits())
      for (const report of knitted(garment, all[0]!, about))
        for (const { motif, columns, firstRow, repeats, sections } of all[0]!.placements.filter(
          ({ piece }) => piece === report.piece,
        )) {
          const entry = plain.motifs[motif] as CordEntry;
          if (entry.kind !== "cord") continue;
          const wanted = workingOrder(entry, Object.fromEntries(sections[0]!.look.values), repeats);
          for (let column = 1; column <= columns; column++)
            for (const [row, strands] of wanted)
              expect(
                report.hangings
                  .filter((hanging) => hanging.row === firstRow + row && hanging.column === column)
                  .map(({ strand }) => strand),
                about,
              ).toEqual(strands);
        }
  });

  test("are drawn with that strand over which the sheet lays over", () => {
    let crossings = 0;
    for (const { about, garment, all } of fits())
      for (const report of knitted(garment, all[0]!, about)) {
        const scene = sceneOf(all[0]!, report.piece);
        const drawn = scene.crossings.map(({ over, under, overFrom, underFrom }) => {
          const [above, below] = [scene.strands[over]!, scene.strands[under]!];
          return `${above.column}: ${above.name} to row ${above.hangings[overFrom + 1]!.row} over ${below.name} to row ${below.hangings[underFrom + 1]!.row}`;
        });
        const laid = laidOver(report);
        crossings += laid.length;
        expect(drawn.sort(), about).toEqual([...laid].sort());
      }
    expect(crossings).toBeGreaterThan(400);
  });
});

function knitted(garment: Garment, fit: Fit, about: string): KnitReport[] {
  const sheetPieces = sheetPiecesOf(fit);
  const orders = Object.fromEntries(garment.motifs.map(({ name }) => [name, "row by row" as const]));
  return sheetPieces.map((sheetPiece) => {
    const piece = fit.pieces.find(({ name }) => name === sheetPiece.piece)!;
    const report = knit(sheetPiece, {
      bedNeedles: garment.bed.needles,
      carriage: piece.carriage,
      orders,
      ...(garment.gauge.cord && { cordNeedles: garment.gauge.cord.needles }),
    });
    expect(report.violations, about).toEqual([]);
    return report;
  });
}
