import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Fit, FittedPlacement, FittedSection } from "../../../../src/fit/fit.ts";
import { runningRows } from "../../../../src/sheet/document/running-row.ts";
import type { Action, SheetRow } from "../../../../src/sheet/sheet.ts";
import { bare, plainGarment } from "../support/small-fits.ts";

const bareFit = bare(plainGarment());

/** So many repeats of so many rows; the first of a placement may have rows of its own before. */
const section = (repeats: number, repeatRows: number, leadRows = 0): FittedSection => ({
  repeats,
  joins: [],
  look: {
    motif: bareFit.garment.motifs[0]!,
    values: new Map(),
    segments: [],
    trace: {
      leadRows,
      repeatRows,
      reach: { left: 1, right: 1 },
      strands: [],
      folded: [],
      cables: [],
      ladders: [],
    },
  },
});

const placement = (
  index: number,
  motif: string,
  firstRow: number,
  sections: readonly FittedSection[],
  piece = "strip",
): FittedPlacement => ({
  index,
  piece,
  motif,
  sections,
  repeats: sections.reduce((sum, { repeats }) => sum + repeats, 0),
  columns: 1,
  gap: 0,
  change: 0,
  firstRow,
  lastRow: firstRow,
  margins: { bottom: 0, top: 0, left: 0, right: 0 },
  panel: { centres: [0], mirrored: 0, leftEdge: -1, rightEdge: 1 },
});

const fitWith = (...placements: readonly FittedPlacement[]): Fit => ({ ...bareFit, placements });

const hang = (number: number): Action => ({
  act: "hang",
  strand: "cord",
  count: 3,
  needle: 1,
  motif: "any",
  placement: number,
  column: 1,
});

const rowWith = (row: number, ...done: readonly Action[]): SheetRow => ({
  row,
  carriage: "right",
  needles: [-5, 5],
  do: done,
});

/** What is told of a row on which the first placement is worked. */
const told = (fit: Fit) => {
  const running = runningRows(fit, "strip");
  return (row: number): readonly string[] => running(rowWith(row, hang(1)));
};

describe("the row of a motif's repeats", () => {
  test("is counted from the motif's first row: lead-in, repeats, and what is left unfinished above them", () => {
    const at = told(fitWith(placement(0, "plait", 10, [section(2, 8, 4)])));
    expect([10, 11, 14, 15, 22, 23, 30, 31, 38].map((row) => at(row)[0])).toEqual([
      "start of the motif",
      "lead-in, row 1 of 4",
      "lead-in, row 4 of 4",
      "repeat 1 of 2, row 1 of 8",
      "repeat 1 of 2, row 8 of 8",
      "repeat 2 of 2, row 1 of 8",
      "repeat 2 of 2, row 8 of 8",
      "unfinished repeat 3, row 1 of 8",
      "unfinished repeat 3, row 8 of 8",
    ]);
  });

  test("goes on over repeats that become longer on the way", () => {
    const at = told(fitWith(placement(0, "plait", 0, [section(1, 4, 2), section(2, 6), section(1, 8)])));
    expect([2, 3, 6, 7, 12, 13, 18, 19, 26, 27].map((row) => at(row)[0])).toEqual([
      "lead-in, row 2 of 2",
      "repeat 1 of 4, row 1 of 4",
      "repeat 1 of 4, row 4 of 4",
      "repeat 2 of 4, row 1 of 6",
      "repeat 2 of 4, row 6 of 6",
      "repeat 3 of 4, row 1 of 6",
      "repeat 3 of 4, row 6 of 6",
      "repeat 4 of 4, row 1 of 8",
      "repeat 4 of 4, row 8 of 8",
      "unfinished repeat 5, row 1 of 8",
    ]);
  });

  test("of equal repeats without a lead-in is what division leaves", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 0, max: 20 }),
        fc.nat(),
        (repeats, rows, first, any) => {
          const into = 1 + (any % (repeats * rows));
          const at = told(fitWith(placement(0, "plait", first, [section(repeats, rows)])));
          expect(at(first + into)).toEqual([
            `repeat ${Math.ceil(into / rows)} of ${repeats}, row ${((into - 1) % rows) + 1} of ${rows}`,
          ]);
        },
      ),
      { numRuns: 50, seed: 4 },
    );
  });
});

describe("several motifs on a piece", () => {
  const fit = fitWith(
    placement(0, "plait", 0, [section(2, 4)]),
    placement(1, "other", 0, [section(2, 4)], "elsewhere"),
    placement(2, "rope", 2, [section(2, 6)]),
  );
  const running = runningRows(fit, "strip");

  test("are named, each where it is worked and in the order of the file", () => {
    expect(running(rowWith(4, hang(3), hang(1)))).toEqual([
      "plait: repeat 1 of 2, row 4 of 4",
      "rope: repeat 1 of 2, row 2 of 6",
    ]);
    expect(running(rowWith(4, hang(3)))).toEqual(["rope: repeat 1 of 2, row 2 of 6"]);
  });

  test("on other pieces do not count", () => {
    expect(running(rowWith(4, hang(2)))).toEqual([]);
    expect(runningRows(fit, "elsewhere")(rowWith(4, hang(2)))).toEqual(["repeat 1 of 2, row 4 of 4"]);
  });
});

test("nothing is told of a row on which no motif is worked, nor of a pattern, which names its repeats itself", () => {
  const running = runningRows(fitWith(placement(0, "dots", 0, [section(2, 4)])), "strip");
  const whose = { motif: "dots", placement: 1, column: 1 };
  expect(running(rowWith(4))).toEqual([]);
  expect(running(rowWith(4, { act: "increase", side: "left", needles: 1 }))).toEqual([]);
  expect(running(rowWith(4, { act: "plain", from: -1, to: 1, ...whose }))).toEqual([]);
  expect(
    running(
      rowWith(4, {
        act: "pattern",
        from: -1,
        to: 1,
        repeat: 1,
        repeats: 2,
        rows: 4,
        stitches: 2,
        across: 1,
        edge: { left: 0, right: 0 },
        ...whose,
      }),
    ),
  ).toEqual([]);
  expect(running(rowWith(4, { act: "out", needle: 3, onto: 4, ...whose }))).toEqual([
    "repeat 1 of 2, row 4 of 4",
  ]);
});
