import { describe, expect, test } from "vitest";
import { checkMeetings } from "../../../../src/fit/check/check-meetings.ts";
import type { Fit, FittedPlacement } from "../../../../src/fit/fit.ts";
import { placed } from "./support/laid-by-hand.ts";

/** Over rows 10 to 20, from 4 needles left of the centre to 6 right of it. */
const one = placed([], {
  motif: "one",
  firstRow: 10,
  lastRow: 20,
  panel: { centres: [0], mirrored: 0, leftEdge: -4, rightEdge: 6 },
});

const other = (rows: readonly [number, number], needles: readonly [number, number], piece = "panel") => ({
  ...one,
  motif: "other",
  piece,
  firstRow: rows[0],
  lastRow: rows[1],
  panel: { centres: [0], mirrored: 0, leftEdge: needles[0], rightEdge: needles[1] },
});

const among = (...placements: readonly FittedPlacement[]) =>
  checkMeetings({ placements } as Partial<Fit> as Fit);

const found = { rule: "panel", found: "one and other lie on the same needles and rows" };

describe("the independent check that motifs keep clear of each other", () => {
  test.each([
    ["begins above", [21, 30], [-4, 6]],
    ["ends below", [1, 9], [-4, 6]],
    ["ends where the first begins at its left", [10, 20], [-9, -4]],
    ["begins where the first ends at its right", [10, 20], [6, 9]],
  ] as const)("finds nothing where the other %s", (_, rows, needles) => {
    expect(among(one, other(rows, needles))).toEqual([]);
  });

  test.each([
    ["begins on its last row", [20, 30], [-4, 6]],
    ["ends on its first row", [1, 10], [-4, 6]],
    ["has its leftmost needle", [10, 20], [-9, -3]],
    ["has its rightmost needle", [10, 20], [5, 9]],
    ["lies within it", [12, 14], [0, 1]],
    ["lies around it", [1, 30], [-9, 9]],
  ] as const)("finds the other where it %s", (_, rows, needles) => {
    expect(among(one, other(rows, needles))).toEqual([found]);
  });

  test("leaves another piece alone", () => {
    expect(among(one, other([10, 20], [-4, 6], "back"))).toEqual([]);
  });

  test("holds each placement against every later one, and none against itself", () => {
    const [low, high] = [other([1, 10], [-4, 6]), other([20, 30], [-4, 6])];
    expect(among(low, high, one)).toEqual([
      { rule: "panel", found: "other and one lie on the same needles and rows" },
      { rule: "panel", found: "other and one lie on the same needles and rows" },
    ]);
  });
});
