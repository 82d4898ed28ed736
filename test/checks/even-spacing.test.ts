import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { evenSpacing, stepsDone } from "../../src/cloth/spacing.ts";

/** Rows at which each step is done. */
function stepRows(rows: number, steps: number): number[] {
  const found: number[] = [];
  for (let row = 1; row <= rows; row++)
    for (let step = stepsDone(rows, steps, row - 1); step < stepsDone(rows, steps, row); step++)
      found.push(row);
  return found;
}

describe("even spacing over rows", () => {
  test.each([
    // Web tutorial "Knitting and the Magic Formula": 3rd row x 4, 4th row x 32.
    [140, 36, { every: 3, times: 4, longerTimes: 32 }],
    // "How to increase evenly along a set number of rows", blog, Feb 2014; the split is derived: 9th x 2, 10th x 9.
    [108, 11, { every: 9, times: 2, longerTimes: 9 }],
    // Derived by the same rule.
    [98, 12, { every: 8, times: 10, longerTimes: 2 }],
    [100, 25, { every: 4, times: 25, longerTimes: 0 }],
    [76, 9, { every: 8, times: 5, longerTimes: 4 }],
    // The same rule over pairs of rows: 15 pairs, 7 shapings: 4th row x 6, 6th row x 1.
    [15, 7, { every: 2, times: 6, longerTimes: 1 }],
  ])("%i rows, %i shapings", (rows, steps, expected) => {
    expect(evenSpacing(rows, steps)).toEqual(expected);
  });

  test("every gap between two steps of an edge is one of the rule's two, and the line is never left by more than half a needle", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 60 }), (rows, steps) => {
        fc.pre(steps <= rows);
        const { every } = evenSpacing(rows, steps);
        const at = stepRows(rows, steps);
        expect(at).toHaveLength(steps);
        for (let index = 1; index < at.length; index++)
          expect([every, every + 1]).toContain(at[index]! - at[index - 1]!);
        for (let row = 0; row <= rows; row++)
          expect(Math.abs(stepsDone(rows, steps, row) - (steps * row) / rows)).toBeLessThanOrEqual(0.5);
      }),
      { seed: 4, numRuns: 300 },
    );
  });
});
