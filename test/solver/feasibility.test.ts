import { describe, expect, it } from "vitest";
import { violations } from "../../solver/feasibility.ts";
import type { Program } from "../../solver/program.ts";

const program: Program = {
  columns: [
    { name: "a", cost: 0, whole: true, upper: 2 },
    { name: "b", cost: 0, whole: false },
  ],
  rows: [
    {
      name: "at most",
      terms: [
        [0, 1],
        [1, 1],
      ],
      relation: "<=",
      bound: 3,
    },
    {
      name: "at least",
      terms: [
        [1, 2],
        [1, 1],
      ],
      relation: ">=",
      bound: 3,
    },
    {
      name: "even",
      terms: [
        [0, 1],
        [1, -1],
      ],
      relation: "=",
      bound: 0,
    },
  ],
};

describe("violations", () => {
  it("finds none in a feasible point, nor in one that misses by a rounding", () => {
    expect(violations(program, [1, 1])).toEqual([]);
    expect(violations(program, [1, 1 - 1e-9])).toEqual([]);
  });

  it("names every row, bound and whole number that is missed, and by how much", () => {
    expect(violations(program, [2.5, -1])).toEqual([
      { kind: "upper bound", name: "a", amount: 0.5 },
      { kind: "wholeness", name: "a", amount: 0.5 },
      { kind: "lower bound", name: "b", amount: 1 },
      { kind: "row", name: "at least", amount: 6 },
      { kind: "row", name: "even", amount: 3.5 },
    ]);
    expect(violations(program, [2, 2])).toEqual([{ kind: "row", name: "at most", amount: 1 }]);
  });

  it("takes a value that is not a number for a violation", () => {
    expect(violations(program, [Number.NaN, 1]).map(({ kind }) => kind)).toEqual([
      "lower bound",
      "upper bound",
      "wholeness",
      "row",
      "row",
    ]);
  });

  it("refuses a point of another size", () => {
    expect(() => violations(program, [1])).toThrow(RangeError);
  });
});
