import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { knittableEdge, wantedEdge } from "../../src/cloth/edge.ts";
import { stepsDone } from "../../src/cloth/spacing.ts";

/** How many gaps of how many rows there are, the shorter first. */
type Gaps = readonly (readonly [rows: number, times: number])[];

/**
 * The trade's division rule: `steps` shapings in `rows` rows are worked every q-th row (steps - r) times and every
 * (q + 1)-th row r times, q = floor(rows / steps), r = rows mod steps (web tutorial "Knitting and the Magic Formula");
 * on even rows only the same over pairs of rows, the intervals doubled (machine-knitting blog, "Taking the magic out
 * of the Magic Formula", 11 Aug 2008).
 *
 * @param unit 1 for any row, 2 for even rows only; divides `rows`
 */
function divisionRule(rows: number, steps: number, unit: 1 | 2): Gaps {
  const every = Math.floor(rows / unit / steps);
  const longer = (rows / unit) % steps;
  return [[unit * every, steps - longer], ...(longer > 0 ? [[unit * (every + 1), longer] as const] : [])];
}

/** The gaps of an edge that the cloth's code shapes; what lies before its first step and after its last is one gap. */
function gapsOfCloth(rows: number, steps: number, unit: 1 | 2): Gaps {
  const corners = [
    { row: 0, needles: 100 },
    { row: rows, needles: 100 + steps },
  ];
  // A row more, because nothing is shaped on the last row of a piece.
  const edge = knittableEdge(
    wantedEdge(corners, rows + 1),
    () => false,
    (row) => row % unit === 0,
  );
  const at = edge.flatMap((needles, row) => (row > 0 && needles > edge[row - 1]! ? [row] : []));
  const between = at.slice(1).map((row, index) => row - at[index]!);
  const gaps = [...between, rows - at.at(-1)! + at[0]!].sort((one, other) => one - other);
  return [...new Set(gaps)].map((gap) => [gap, gaps.filter((one) => one === gap).length]);
}

describe("even spacing over rows", () => {
  test.each([
    // Web tutorial "Knitting and the Magic Formula": 3rd row x 4, 4th row x 32.
    {
      rows: 140,
      steps: 36,
      unit: 1,
      gaps: [
        [3, 4],
        [4, 32],
      ],
    },
    // "How to increase evenly along a set number of rows", blog, Feb 2014; the split is derived: 9th x 2, 10th x 9.
    {
      rows: 108,
      steps: 11,
      unit: 1,
      gaps: [
        [9, 2],
        [10, 9],
      ],
    },
    // Derived by the same rule.
    {
      rows: 98,
      steps: 12,
      unit: 1,
      gaps: [
        [8, 10],
        [9, 2],
      ],
    },
    { rows: 100, steps: 25, unit: 1, gaps: [[4, 25]] },
    {
      rows: 76,
      steps: 9,
      unit: 1,
      gaps: [
        [8, 5],
        [9, 4],
      ],
    },
    // Even rows only, 15 pairs.
    {
      rows: 30,
      steps: 7,
      unit: 2,
      gaps: [
        [4, 6],
        [6, 1],
      ],
    },
  ] as const)("$rows rows, $steps shapings, in units of $unit", ({ rows, steps, unit, gaps }) => {
    expect(divisionRule(rows, steps, unit)).toEqual(gaps);
    expect(gapsOfCloth(rows, steps, unit)).toEqual(gaps);
  });

  test("the cloth's gaps are those of the rule, on any row and on even rows only", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 1, max: 60 }),
        fc.constantFrom(1 as const, 2 as const),
        (pairs, steps, unit) => {
          fc.pre(steps <= pairs);
          expect(gapsOfCloth(unit * pairs, steps, unit)).toEqual(divisionRule(unit * pairs, steps, unit));
        },
      ),
      { seed: 4, numRuns: 500 },
    );
  });

  test("the line is never left by more than half a needle", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 60 }), (rows, steps) => {
        const off = Array.from({ length: rows + 1 }, (_, row) =>
          Math.abs(stepsDone(rows, steps, row) - (steps * row) / rows),
        );
        expect(Math.max(...off)).toBeLessThanOrEqual(0.5);
      }),
      { seed: 4, numRuns: 300 },
    );
  });
});
