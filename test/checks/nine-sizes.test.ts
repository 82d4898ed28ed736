import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { parse } from "yaml";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import type { Fit } from "../../src/fit/fit.ts";
import { readGarment } from "../../src/garment/read-garment.ts";
import { fitRange } from "../../src/grading/fit-range.ts";
import { rangeText } from "../../src/grading/report/range-text.ts";
import { knit } from "../support/bed-simulator.ts";
import { type LookFit, leastByLook } from "../support/exhaustive-by-look.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { type PrintedTable, readPrintedTable } from "../support/printed-table.ts";
import { type RangeFile, sizeOf } from "../support/random-range.ts";
import { lengthMm } from "../support/referee/entries.ts";
import type { Look } from "../support/referee/looks.ts";
import { sheetPiecesOf } from "../support/sheet-of.ts";

/**
 * The pattern that is printed of nine sizes, number by number, against arithmetic that is written out here and a search
 * through every look and every layout of every size.
 */
const file = "samples/nine-sizes.yaml";
const source = readFileSync(file, "utf8");
const plain = parse(source) as RangeFile & { pieces: Record<string, { make?: number }> };
const names = Object.keys(plain.sizes);
const width = 80;

/** 22 stitches and 31 rows over 10 cm, 19 cord stitches over 10 cm. */
const [stitchMm, rowMm, cordStitchMm] = [100 / 22, 100 / 31, 100 / 19];

let text = "";
let fits: readonly Fit[];
let bed: number;
let table: PrintedTable;
/** By size: for each look the cheapest way to have it. */
let bySize: readonly Map<string, LookFit>[];
/** What all sizes together give up with each look that all can have, the least first. */
let sums: readonly (readonly [key: string, cost: number])[];
/** By size, with the look that gives up least over all. */
let best: readonly LookFit[];

const keyOf = ({ quantities, segments }: Look): string =>
  [quantities.interval, quantities.spread, ...segments.map(({ pickup }) => pickup)].join(" ");

beforeAll(async () => {
  const { range } = readGarment(source, file);
  const result = await fitRange(range!, simplexEngine);
  if (result.status !== "fits") throw new Error(result.status);
  expect([result.proven, result.bestNodes]).toEqual([true, 1]);
  fits = result.sizes.map(({ fit }) => fit);
  bed = range!.sizes[0]!.garment.bed.needles;
  text = rangeText(result, width);
  table = readPrintedTable(text);
  bySize = range!.sizes.map(({ name, garment }) =>
    leastByLook(sizeOf(plain, name), "plait", edgesOf(garment), keyOf),
  );
  const common = [...bySize[0]!.keys()].filter((key) => bySize.every((looks) => looks.has(key)));
  sums = common
    .map((key) => [key, bySize.reduce((sum, looks) => sum + looks.get(key)!.cost, 0)] as const)
    .sort(([, a], [, b]) => a - b);
  best = bySize.map((looks) => looks.get(sums[0]![0])!);
});

const pieces = ["front", "back", "sleeve"] as const;
const times = { front: 1, back: 1, sleeve: 2 };
const entryOf = (name: string, piece: string) => sizeOf(plain, name).pieces[piece]!;
/** Whole rows, or whole needles in pairs, nearest to a length. */
const rowsIn = (length: string): number => Math.round(lengthMm(length) / rowMm);
const widthOf = (name: string, piece: string, station: 0 | -1): string => {
  const found = entryOf(name, piece).outline.at(station)!;
  if (!("width" in found)) throw new Error("a width is needed");
  return found.width;
};

/** Both arms of a folded cord, from the stitch that each starts with: the lead-in once, then two crossings a repeat. */
const usedFor = ({ segments }: Look, repeats: number): number =>
  2 * (1 + segments[0]!.pickup + 2 * repeats * segments[1]!.pickup);
/** 15 in a hundred more, rounded up. */
const madeFor = (used: number): number => Math.ceil((used * 115) / 100);
const makeOf = (size: number, at: number): number =>
  madeFor(usedFor(best[size]!.look, best[size]!.layouts[at]!.repeats));

describe("the printed pattern in nine sizes", () => {
  test("names the sizes in the order of the file, and keeps to the width", () => {
    expect(text).toContain(`Sizes: ${names[0]} (${names.slice(1).join(", ")})`);
    expect(names).toHaveLength(9);
    for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(width);
  });

  test("tells the look that gives up least over all sizes", () => {
    const { quantities, segments } = best[0]!.look;
    expect(text).toContain(`interval ${quantities.interval} rows and spread ${quantities.spread} needles`);
    const [leadIn, crossing] = segments;
    const ease = (pickup: number, needles: number): string => {
      const span = Math.hypot(needles * stitchMm, quantities.interval! * rowMm);
      const percent = 100 * ((pickup * cordStitchMm) / span - 1);
      return `${percent < 0 ? "" : "+"}${percent.toFixed(1)} %`;
    };
    // From beside the centre to `spread` needles out, and from there as far to the other side.
    const [out, over] = [quantities.spread! - 1, 2 * quantities.spread! - 1];
    expect(text).toMatch(
      new RegExp(
        `lead-in +count +${leadIn!.pickup} +${out} needles .*ease \\${ease(leadIn!.pickup, out)}\\n` +
          ` +crossing +count +${crossing!.pickup} +${over} needles .*ease \\${ease(crossing!.pickup, over)}\\n`,
      ),
    );
  });

  test.each(pieces)("counts the needles and rows of the %s", (piece) => {
    const at = pieces.indexOf(piece);
    const changes = best.map(({ layouts }) => layouts[at]!.rowsChanged);
    expect(table.numbers(piece, "needles to cast on")).toEqual(
      // Both sides of the centre alike; a half goes up.
      names.map((name) => 2 * Math.round(lengthMm(widthOf(name, piece, 0)) / stitchMm / 2 + 1e-9)),
    );
    expect(table.numbers(piece, "rows")).toEqual(
      names.map((name, size) => rowsIn(entryOf(name, piece).outline.at(-1)!.height) + changes[size]!),
    );
    if (changes.some((change) => change !== 0))
      expect(table.numbers(piece, "change of length, rows")).toEqual(changes);
    else expect(table.has(piece, "change of length, rows")).toBe(false);
  });

  test.each(pieces)(
    "tells where the cord lies on the %s, as a search through every layout finds it",
    (piece) => {
      const at = pieces.indexOf(piece);
      const told = (label: string) => table.numbers(piece, label, "plait");
      const layouts = best.map((one) => one.layouts[at]!);
      expect(told("repeats")).toEqual(layouts.map(({ repeats }) => repeats));
      expect(told("first row")).toEqual(layouts.map(({ firstRow }) => firstRow));
      expect(told("last row")).toEqual(layouts.map(({ lastRow }) => lastRow));
      expect(told("margin below, rows")).toEqual(layouts.map(({ margins }) => margins.bottom));
      expect(told("margin above, rows")).toEqual(layouts.map(({ margins }) => margins.top));
      expect(told("margin at the left, needles")).toEqual(layouts.map(({ margins }) => margins.left));
      expect(told("margin at the right, needles")).toEqual(layouts.map(({ margins }) => margins.right));
    },
  );

  test.each(pieces)("fills the field on the %s to the row in every size", (piece) => {
    const told = (label: string) => table.numbers(piece, label, "plait");
    const { interval } = best[0]!.look.quantities;
    const changes = best.map(({ layouts }) => layouts[pieces.indexOf(piece)]!.rowsChanged);
    names.forEach((name, size) => {
      const { marks, neck, outline } = entryOf(name, piece);
      const bottom = rowsIn(Object.values(marks!)[0]!);
      const top = {
        front: () => rowsIn(neck![0]!.height),
        back: () => rowsIn(marks!.underarm!),
        sleeve: () => rowsIn(outline.at(-1)!.height),
      }[piece]();
      const [first, last] = [told("first row")[size]!, told("last row")[size]!];
      expect(first).toBe(bottom + told("margin below, rows")[size]!);
      expect(last).toBe(first + interval! + told("repeats")[size]! * 2 * interval!);
      expect(last + told("margin above, rows")[size]!).toBe(top + changes[size]!);
    });
  });

  test("tells the cord to make for every piece and for all of them", () => {
    for (const [at, piece] of pieces.entries()) {
      const make = names.map((_, size) => makeOf(size, at));
      expect(table.numbers(piece, "cord stitches to make", "plait")).toEqual(make);
      expect(table.numbers(piece, "passes for them", "plait")).toEqual(make.map((one) => 2 * one));
      expect(table.numbers(piece, "length of the cord, cm", "plait")).toEqual(
        make.map((one) => Math.ceil(one * cordStitchMm - 1e-9) / 10),
      );
    }
    const all = names.map((_, size) =>
      pieces.reduce((sum, piece, at) => sum + times[piece] * makeOf(size, at), 0),
    );
    expect(table.numbers("in all", "cord stitches to make")).toEqual(all);
    expect(table.numbers("in all", "length of the cord, m")).toEqual(
      all.map((stitches) => Math.ceil((stitches * cordStitchMm) / 10 - 1e-9) / 100),
    );
  });

  // Loops by hand, as in yarn-and-cord.test.ts: sqrt(23.1 / 6.82) cm, and at most sqrt(24.1 / (2.175 x 3.075)) cm.
  const [loopCm, longestLoopCm] = [Math.sqrt(23.1 / 6.82), Math.sqrt(24.1 / (2.175 * 3.075))];
  const tex = 370;

  test("tells the yarn of the cord to have at hand, tails included", () => {
    // Three loops a tenth looser, and a float behind two stitches; two tails of 20 cm for each of four cords.
    const metresEach = (3 * longestLoopCm * 1.1) / 100 + (2 * stitchMm) / 1000;
    const metres = table
      .numbers("in all", "cord stitches to make")
      .map((stitches) => stitches * metresEach + 4 * 2 * 0.2);
    expect(table.numbers("in all", "cord yarn at hand, m")).toEqual(metres.map(Math.ceil));
    expect(table.numbers("in all", "cord yarn at hand, g")).toEqual(
      metres.map((one) => Math.ceil((one * tex) / 1000)),
    );
  });

  test("tells the yarn of the ground to have at hand, within a hundredth of the outlines' areas", () => {
    const told = table.numbers("in all", "ground yarn at hand, m");
    names.forEach((name, size) => {
      const area = pieces.reduce((sum, piece, at) => {
        const { outline, neck } = entryOf(name, piece);
        const height = lengthMm(outline.at(-1)!.height) + best[size]!.layouts[at]!.rowsChanged * rowMm;
        const [low, high] = [0, -1].map((station) => lengthMm(widthOf(name, piece, station as 0 | -1)));
        const opening = neck
          ? ((lengthMm(neck[0]!.width) + lengthMm(neck[1]!.width)) / 2) *
            (lengthMm(neck[1]!.height) - lengthMm(neck[0]!.height))
          : 0;
        return sum + times[piece] * (((low! + high!) / 2) * height - opening);
      }, 0);
      // The most that it may take, and a tenth of what it takes about for waste.
      const metres = ((area / (stitchMm * rowMm)) * (longestLoopCm + loopCm / 10)) / 100;
      expect(Math.abs(told[size]! - metres)).toBeLessThan(metres / 100);
    });
    const grams = table.numbers("in all", "ground yarn at hand, g");
    grams.forEach((one, size) => {
      expect(Math.abs(one - (told[size]! * tex) / 1000)).toBeLessThanOrEqual(1);
    });
  });

  test("tells what every size gives up, by itself and for all", () => {
    const alone = bySize.map((looks) => Math.min(...[...looks.values()].map(({ cost }) => cost)));
    expect(text).toContain(`What the sizes give up: ${sums[0]![1].toFixed(3)} in all (proven`);
    const forAll = names.map((name, size) => {
      const [own, least] = [best[size]!.cost, alone[size]!];
      expect(text).toMatch(
        new RegExp(
          `^ +${name} +${own.toFixed(3)} +${least.toFixed(3)} +${Math.abs(own - least).toFixed(3)}$`,
          "m",
        ),
      );
      return own - least;
    });
    const most = names
      .map((name, size) => [name, forAll[size]!] as const)
      .filter(([, more]) => more > 1e-6)
      .sort(([, a], [, b]) => b - a)
      .slice(0, 3)
      .map(([name, more]) => `${name} (${more.toFixed(3)})`);
    expect(most).toHaveLength(3);
    expect(text.replace(/\s+/g, " ")).toContain(
      `For what all sizes share, ${most[0]}, ${most[1]} and ${most[2]} give up most.`,
    );
    const gains = names
      .map((name, size) => {
        const others = sums.map(([key, cost]) => cost - bySize[size]!.get(key)!.cost);
        // A look that this size cannot have may be open to the others.
        const open = [...bySize[(size + 1) % 9]!.keys()]
          .filter((key) => bySize.every((looks, other) => other === size || looks.has(key)))
          .map((key) =>
            bySize.reduce((sum, looks, other) => sum + (other === size ? 0 : looks.get(key)!.cost), 0),
          );
        return [name, sums[0]![1] - Math.min(...others, ...open) - alone[size]!] as const;
      })
      .filter(([, gain]) => gain > 1e-6)
      .sort(([, a], [, b]) => b - a)
      .map(([name, gain]) => `${name} ${gain.toFixed(3)}`);
    expect(text.replace(/\s+/g, " ")).toContain(
      `To leave one size out of what is shared would gain over all sizes: ${gains.join(", ")}; any other, nothing.`,
    );
  });

  test("tells how long each piece may come out where a quarter of a row in the swatch's 31 was misread", () => {
    const flat = text.replace(/\s+/g, " ");
    for (const piece of Object.keys(plain.pieces)) {
      const told = table.numbers(piece, "rows").map((rows) => {
        const [least, most] = [(rows * 10) / 31.25, (rows * 10) / 30.75];
        return `${Math.floor(10 * least + 1e-6) / 10} to ${Math.ceil(10 * most - 1e-6) / 10}`;
      });
      expect(flat).toContain(`${piece}, length in cm: ${told[0]} (${told.slice(1).join(", ")})`);
    }
  });

  test("tells the next best looks for every size", () => {
    const shown = [...text.matchAll(/^ +(\d+\.\d{3}) {2}(?:interval|spread|lead-in|crossing)/gm)].map(
      ([, cost]) => cost,
    );
    expect(shown).toEqual(sums.slice(1, 4).map(([, cost]) => cost.toFixed(3)));
  });

  test("is knitted in every size from its sheets alone, with the cord that is told", () => {
    fits.forEach((fit, size) => {
      for (const sheetPiece of sheetPiecesOf(fit)) {
        const { carriage } = fit.pieces.find(({ name }) => name === sheetPiece.piece)!;
        const report = knit(sheetPiece, { bedNeedles: bed, carriage });
        const at = pieces.indexOf(sheetPiece.piece as (typeof pieces)[number]);
        const { look, layouts } = best[size]!;
        expect(report.violations).toEqual([]);
        expect(report.rows).toBe(table.numbers(sheetPiece.piece, "rows")[size]);
        expect(report.cordStitches).toBe(usedFor(look, layouts[at]!.repeats));
      }
    });
  });
});
