import { describe, expect, test } from "vitest";
import { reachOver } from "../../../../src/fit/check/reach-over.ts";
import { motifWritten, valuesOf } from "./support/motif-written.ts";

const rows = (from: number, to: number): readonly number[] =>
  Array.from({ length: to - from + 1 }, (_, index) => from + index);

describe("how far a column reaches at a row", () => {
  test("is as far as the run that is worked there, and where it comes from another one as the wider of the two", () => {
    const run = (interval: number, spread: number, repeats: number) => ({
      values: valuesOf({ interval, spread }),
      repeats,
    });
    // Rows 0 to 12 with the lead-in, 12 to 28, and 28 to 52, of which 12 come from needles of the run before.
    const reachAt = reachOver(motifWritten({ like: "crossed cord" }), [
      run(4, 3, 1),
      run(4, 5, 2),
      run(6, 4, 2),
    ]);
    const over = (from: number, to: number) => [
      ...new Set(rows(from, to).map((row) => JSON.stringify(reachAt(row)))),
    ];
    expect(over(0, 11)).toEqual(['{"from":-3,"to":3}']);
    // Row 12 belongs to both.
    expect(over(12, 28)).toEqual(['{"from":-5,"to":5}']);
    expect(over(29, 40)).toEqual(['{"from":-5,"to":5}']);
    expect(over(41, 52)).toEqual(['{"from":-4,"to":4}']);
  });

  test("keeps to the wider run below where the strands come in from it", () => {
    const run = (spread: number, repeats: number) => ({
      values: valuesOf({ interval: 3, spread }),
      repeats,
    });
    const reachAt = reachOver(motifWritten({ like: "single cord" }), [run(9, 1), run(2, 2)]);
    // The first run has rows 0 to 3 + 6; the second comes from needle L9 over its first repeat, up to row 15.
    expect([9, 10, 15, 16, 21].map((row) => reachAt(row))).toEqual([
      { from: -9, to: 9 },
      { from: -9, to: 9 },
      { from: -9, to: 9 },
      { from: -2, to: 2 },
      { from: -2, to: 2 },
    ]);
  });

  test.each([
    ["right", 1, { from: 0, to: 7 }],
    ["left", -1, { from: -7, to: 0 }],
  ])("is counted from the centre where all of the motif lies at its %s", (_, sign, reach) => {
    const motif = motifWritten({
      kind: "cord",
      quantities: { interval: { unit: "rows", allow: "2..6" } },
      lead: 0,
      repeat: "2 * interval",
      strands: {
        cord: {
          start: [4 * sign, 0],
          repeat: [
            [7 * sign, "interval"],
            [4 * sign, "2 * interval"],
          ],
        },
      },
    });
    expect(reachOver(motif, [{ values: valuesOf({ interval: 4 }), repeats: 2 }])(3)).toEqual(reach);
  });

  test("goes on to the needles beside a ladder, further out than the crossing", () => {
    const motif = motifWritten({
      kind: "cable",
      quantities: { interval: { unit: "rows", allow: "4..8" } },
      lead: 0,
      repeat: "interval",
      cross: [2, 2],
      over: "left",
      crossings: { start: [0, 0], repeat: [[0, "interval"]] },
      ladders: [-3, 5],
    });
    // L3 with L4 outside it; R5 with R6.
    expect(reachOver(motif, [{ values: valuesOf({ interval: 6 }), repeats: 2 }])(6)).toEqual({
      from: -4,
      to: 6,
    });
  });
});
