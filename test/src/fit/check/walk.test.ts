import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { numberOf, type Run, walk } from "../../../../src/fit/check/walk.ts";
import type { Motif } from "../../../../src/motif/motif.ts";
import { motifWritten, valuesOf } from "./support/motif-written.ts";

/** Needle and row of every hanging, strand by strand. */
const hangings = (motif: Motif, runs: readonly Run[]): Record<string, readonly string[]> =>
  Object.fromEntries(
    walk(motif, runs).strands.map(({ name, points }) => [
      name,
      points.map(({ needle, row }) => `${needle} at ${row}`),
    ]),
  );

const interval = { unit: "rows", allow: "2..12" };
const spread = { unit: "needles", allow: "2..9" };

describe("walking a cord from its anchors", () => {
  let crossed: Motif;
  let braid: Motif;
  let loops: Motif;
  let numbered: Motif;

  beforeAll(() => {
    crossed = motifWritten({ like: "crossed cord" });
    braid = motifWritten({ like: "braid" });
    loops = motifWritten({ like: "standing loops" });
    numbered = motifWritten({
      kind: "cord",
      quantities: { cords: { unit: "strands", allow: "3..5" }, interval },
      lead: "interval",
      repeat: "interval",
      strands: {
        selvedge: { start: [-9, 0], "lead-in": [[-9, "interval"]], repeat: [[-9, "interval"]] },
        "inner cord": {
          each: { i: "2..cords" },
          start: ["2 * i", 0],
          "lead-in": [["2 * i", "interval"]],
          repeat: [["4 + 2 * mod(i - 1, cords - 1)", "interval"]],
          next: "mod(i - 1, cords - 1) + 2",
        },
        "outer cord": {
          each: { i: "1..2" },
          start: ["20 + i", 0],
          "lead-in": [["20 + i", "interval"]],
          repeat: [["20 + i", "interval"]],
        },
        edge: { start: [-7, 0], "lead-in": [[-7, "interval"]], repeat: [[-7, "interval"]] },
      },
    });
  });

  test("works the lead-in once, then crossing after crossing", () => {
    const runs = [{ values: valuesOf({ interval: 4, spread: 3 }), repeats: 2 }];
    expect(hangings(crossed, runs)).toEqual({
      left: ["-1 at 0", "-3 at 4", "3 at 8", "-3 at 12", "3 at 16", "-3 at 20"],
      right: ["1 at 0", "3 at 4", "-3 at 8", "3 at 12", "-3 at 16", "3 at 20"],
    });
    expect(walk(crossed, runs).rows).toBe(4 + 2 * 8);
  });

  test("takes up the width of a needle, from its inner to its outer edge", () => {
    const [left, right] = walk(crossed, [
      { values: valuesOf({ interval: 4, spread: 3 }), repeats: 0 },
    ]).strands;
    expect(left!.points).toEqual([
      { needle: -1, row: 0, run: 0, from: -1, to: 0 },
      { needle: -3, row: 4, run: 0, from: -3, to: -2 },
    ]);
    expect(right!.points).toEqual([
      { needle: 1, row: 0, run: 0, from: 0, to: 1 },
      { needle: 3, row: 4, run: 0, from: 2, to: 3 },
    ]);
  });

  test("goes on with other values in a further run, without another lead-in", () => {
    const runs = [
      { values: valuesOf({ interval: 4, spread: 3 }), repeats: 1 },
      { values: valuesOf({ interval: 6, spread: 5 }), repeats: 2 },
    ];
    // The first run ends at row 4 + 8; a repeat of the second has 12 rows.
    expect(hangings(crossed, runs).left).toEqual([
      "-1 at 0",
      "-3 at 4",
      "3 at 8",
      "-3 at 12",
      "5 at 18",
      "-5 at 24",
      "5 at 30",
      "-5 at 36",
    ]);
    const { rows, strands } = walk(crossed, runs);
    expect(rows).toBe(36);
    expect(strands[0]!.points.map(({ run }) => run)).toEqual([0, 0, 0, 0, 1, 1, 1, 1]);
  });

  test("goes on in the next repeat where the strand that it follows would", () => {
    const runs = [{ values: valuesOf({ interval: 4, spread: 3 }), repeats: 3 }];
    // left comes to the right, waits there and comes to the middle, then goes to the left.
    expect(hangings(braid, runs)).toEqual({
      left: ["-3 at 0", "1 at 4", "3 at 8", "3 at 12", "-1 at 16", "-3 at 20", "-3 at 24"],
      middle: ["-1 at 0", "-3 at 4", "-3 at 8", "1 at 12", "3 at 16", "3 at 20", "-1 at 24"],
      right: ["3 at 0", "3 at 4", "-1 at 8", "-3 at 12", "-3 at 16", "1 at 20", "3 at 24"],
    });
  });

  test("tells the cord stitches of a standing loop, and only where they are fixed", () => {
    const { strands, standing, edge } = walk(loops, [
      { values: valuesOf({ interval: 6, loop: 9 }), repeats: 1 },
    ]);
    expect(strands).toEqual([
      {
        name: "cord",
        points: [
          { needle: -1, row: 0, run: 0, from: -1, to: 0 },
          { needle: -1, row: 2, run: 0, from: -1, to: 0, count: 9 },
          { needle: 1, row: 6, run: 0, from: 0, to: 1 },
          { needle: 1, row: 8, run: 0, from: 0, to: 1, count: 9 },
          { needle: -1, row: 12, run: 0, from: -1, to: 0 },
        ],
      },
    ]);
    expect(standing).toEqual([]);
    expect(edge).toEqual({ left: 0, right: 0 });
  });

  test("numbers the strands of a family from its first number to its last, beside others", () => {
    const runs = [{ values: valuesOf({ cords: 4, interval: 2 }), repeats: 3 }];
    // Cords 2 to 4 stand on needles 4, 6 and 8; each goes one place on in a repeat, the last one to the first place.
    expect(hangings(numbered, runs)).toEqual({
      selvedge: ["-9 at 0", "-9 at 2", "-9 at 4", "-9 at 6", "-9 at 8"],
      "inner cord 2": ["4 at 0", "4 at 2", "6 at 4", "8 at 6", "4 at 8"],
      "inner cord 3": ["6 at 0", "6 at 2", "8 at 4", "4 at 6", "6 at 8"],
      "inner cord 4": ["8 at 0", "8 at 2", "4 at 4", "6 at 6", "8 at 8"],
      "outer cord 1": ["21 at 0", "21 at 2", "21 at 4", "21 at 6", "21 at 8"],
      "outer cord 2": ["22 at 0", "22 at 2", "22 at 4", "22 at 6", "22 at 8"],
      edge: ["-7 at 0", "-7 at 2", "-7 at 4", "-7 at 6", "-7 at 8"],
    });
  });

  test("has one repeat more of rows and hangings for each repeat, whatever the values", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 12 }),
        fc.integer({ min: 2, max: 20 }),
        fc.integer({ min: 0, max: 6 }),
        (rows, needles, repeats) => {
          const runs = [{ values: valuesOf({ interval: rows, spread: needles }), repeats }];
          const walked = walk(crossed, runs);
          expect(walked.rows).toBe(rows * (1 + 2 * repeats));
          for (const { name, points } of walked.strands) {
            expect(points).toHaveLength(2 + 2 * repeats);
            // A whole repeat ends where it began: each strand on its own side.
            expect(points.at(-1)).toMatchObject({
              needle: name === "left" ? -needles : needles,
              row: walked.rows,
            });
          }
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe("walking a cable from its crossings", () => {
  test("takes up the stitches that change places, on either side of the crossing's middle", () => {
    const cable = motifWritten({
      kind: "cable",
      quantities: { width: { unit: "stitches", allow: "1..4" }, interval },
      lead: "interval",
      repeat: "2 * interval",
      cross: ["width", "2 * width"],
      cables: {
        inner: {
          over: "left",
          start: [-8, 0],
          "lead-in": [[-8, "interval"]],
          repeat: [
            [-7, "interval"],
            [-8, "2 * interval"],
          ],
        },
        outer: { over: "right", start: [9, 0], "lead-in": [[9, "interval"]], repeat: [[9, "2 * interval"]] },
      },
    });
    const run = { values: valuesOf({ width: 2, interval: 6 }), repeats: 1 };
    expect(walk(cable, [run])).toEqual({
      rows: 6 + 12,
      strands: [
        {
          name: "inner",
          points: [
            { needle: -8, row: 0, run: 0, from: -10, to: -4 },
            { needle: -8, row: 6, run: 0, from: -10, to: -4 },
            { needle: -7, row: 12, run: 0, from: -9, to: -3 },
            { needle: -8, row: 18, run: 0, from: -10, to: -4 },
          ],
        },
        {
          name: "outer",
          points: [
            { needle: 9, row: 0, run: 0, from: 7, to: 13 },
            { needle: 9, row: 6, run: 0, from: 7, to: 13 },
            { needle: 9, row: 18, run: 0, from: 7, to: 13 },
          ],
        },
      ],
      standing: [],
      edge: { left: 0, right: 0 },
    });
    const narrower = { values: valuesOf({ width: 1, interval: 4 }), repeats: 1 };
    expect(walk(cable, [run, narrower]).strands[1]!.points.at(-1)).toEqual({
      needle: 9,
      row: 18 + 8,
      run: 1,
      from: 8,
      to: 11,
    });
  });

  test("keeps a ladder and the next needle outward free at every row", () => {
    const ladders = motifWritten({
      kind: "cable",
      quantities: { inside: { unit: "needles", allow: "2..6" } },
      lead: 0,
      repeat: 6,
      cross: [1, 1],
      crossings: { start: [0, 0], repeat: [[0, 6]] },
      over: "left",
      ladders: ["-inside", "inside + 1"],
    });
    // L3 and, outside it, L4; R4 and, outside it, R5.
    expect(walk(ladders, [{ values: valuesOf({ inside: 3 }), repeats: 2 }]).standing).toEqual([
      { from: -4, to: -2 },
      { from: 3, to: 5 },
    ]);
  });
});

describe("walking a band", () => {
  const band = (stitches: number): Motif =>
    motifWritten({
      kind: "band",
      quantities: { hem: { unit: "stitches", allow: "1..4" } },
      stitches,
      repeat: 10,
      edge: ["hem", "hem + 2"],
    });
  const runs = [{ values: valuesOf({ hem: 1 }), repeats: 3 }];

  test.each([
    [12, -6, 6],
    [7, -3, 4],
  ])("of %s stitches takes up a column of its own at every row", (stitches, from, to) => {
    expect(walk(band(stitches), runs)).toEqual({
      rows: 30,
      strands: [],
      standing: [{ from, to }],
      edge: { left: 1, right: 3 },
    });
  });
});

test("an expression without a value is no number", () => {
  const motif = motifWritten({
    kind: "cord",
    quantities: { interval, spread },
    lead: 0,
    repeat: "interval",
    rules: ["interval / (spread - 3) > 0"],
    strands: { cord: { start: [1, 0], repeat: [[1, "interval"]] } },
  });
  const [{ left }] = motif.rules as [Motif["rules"][number]];
  expect(numberOf(left, valuesOf({ interval: 4, spread: 5 }))).toBe(2);
  expect(numberOf(left, valuesOf({ interval: 4, spread: 3 }))).toBeNaN();
});
