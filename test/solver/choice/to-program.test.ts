import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ChoiceProgram, type Option, toProgram } from "../../../solver/choice.ts";
import type { Relation } from "../../../solver/program.ts";
import { combinations, costOf, keepsRows } from "../support/exhaustive.ts";
import { anyChoice } from "../support/random-programs.ts";

const option = (name: string, cost: number, terms: Option["terms"] = []): Option => ({
  name,
  cost,
  terms,
  face: name,
});
const rows = (...relations: Relation[]) =>
  relations.map((relation) => ({ name: relation, relation, bound: 1 }));
const keptOf = (choice: ChoiceProgram, keep?: number[][]) =>
  toProgram(choice, keep).options.map(([, index]) => index);

describe("toProgram", () => {
  it("writes a 0/1 column for each option, a row for each group and the rows that tie", () => {
    const choice: ChoiceProgram = {
      groups: [
        { name: "look", options: [option("wide", 2, [[0, -1]]), option("narrow", 3)] },
        {
          name: "sleeve",
          options: [
            option("long", 0, [
              [0, 1],
              [1, 4],
            ]),
          ],
        },
      ],
      rows: rows("=", "<="),
    };
    expect(toProgram(choice)).toEqual({
      program: {
        columns: [
          { name: "look.wide", cost: 2, whole: true, upper: 1 },
          { name: "look.narrow", cost: 3, whole: true, upper: 1 },
          { name: "sleeve.long", cost: 0, whole: true, upper: 1 },
        ],
        rows: [
          {
            name: "one.look",
            terms: [
              [0, 1],
              [1, 1],
            ],
            relation: "=",
            bound: 1,
          },
          { name: "one.sleeve", terms: [[2, 1]], relation: "=", bound: 1 },
          {
            name: "=",
            terms: [
              [0, -1],
              [2, 1],
            ],
            relation: "=",
            bound: 1,
          },
          { name: "<=", terms: [[2, 4]], relation: "<=", bound: 1 },
        ],
      },
      options: [
        [0, 0],
        [0, 1],
        [1, 0],
      ],
    });
  });

  it("keeps the cheapest of options that are alike in every row, however their terms are written", () => {
    const options = [
      option("a", 3, [
        [0, 1],
        [1, 2],
      ]),
      option("b", 1, [
        [1, 2],
        [0, 0.5],
        [0, 0.5],
      ]),
      option("c", 0, [
        [0, 1],
        [1, 3],
      ]),
      option("d", 2),
      option("e", 1, [[0, 0]]),
    ];
    expect(keptOf({ groups: [{ name: "g", options }], rows: rows("=", "=") })).toEqual([1, 2, 4]);
  });

  it("keeps the first in the list of equally cheap ones, the rounding of sums aside", () => {
    const options = [option("a", 0.5), option("b", 0.1 + 0.2), option("c", 0.3), option("d", 0.3)];
    expect(keptOf({ groups: [{ name: "g", options }], rows: [] })).toEqual([1]);
  });

  it("drops what asks more of a budget and costs no less, or gives less where something is owed", () => {
    const using = (name: string, cost: number, budget: number, owed = 0): Option =>
      option(name, cost, [
        [0, budget],
        [1, owed],
      ]);
    const options = [
      using("dear", 3, 2),
      using("frugal", 2, 1),
      using("cheap", 1, 5),
      using("wasteful", 1.5, 6),
      using("giving", 2, 1, 4),
      using("keeping", 2, 1, -1),
    ];
    expect(keptOf({ groups: [{ name: "g", options }], rows: rows("<=", ">=") })).toEqual([2, 4]);
  });

  it("writes only what is kept, and weighs it against nothing else", () => {
    const options = [option("a", 1), option("b", 2), option("c", 3)];
    expect(keptOf({ groups: [{ name: "g", options }], rows: [] }, [[1, 2]])).toEqual([1]);
    const { program } = toProgram({ groups: [{ name: "g", options }], rows: rows("=") }, [[]]);
    expect(program).toEqual({
      columns: [],
      rows: [
        { name: "one.g", terms: [], relation: "=", bound: 1 },
        { name: "=", terms: [], relation: "=", bound: 1 },
      ],
    });
  });

  it("refuses terms of rows that are not there and numbers that are not finite", () => {
    const choice = (bad: Option): ChoiceProgram => ({
      groups: [{ name: "g", options: [bad] }],
      rows: rows("="),
    });
    expect(() => toProgram(choice(option("a", 1, [[1, 1]])))).toThrow(RangeError);
    expect(() => toProgram(choice(option("a", 1, [[0, Number.NaN]])))).toThrow(RangeError);
    expect(() => toProgram(choice(option("a", Number.POSITIVE_INFINITY)))).toThrow(RangeError);
  });

  it("drops no option without which the least cost would be another", () => {
    const least = (choice: ChoiceProgram, kept: readonly (readonly number[])[]) => {
      let found = Infinity;
      for (const at of combinations(kept.map(({ length }) => length))) {
        const picks = at.map((place, group) => kept[group]![place]!);
        if (keepsRows(choice, picks)) found = Math.min(found, costOf(choice, picks));
      }
      return found;
    };
    fc.assert(
      fc.property(anyChoice, (choice) => {
        const kept = choice.groups.map((_, group) =>
          toProgram(choice).options.flatMap(([of, index]) => (of === group ? [index] : [])),
        );
        const all = choice.groups.map(({ options }) => options.map((_, index) => index));
        expect(least(choice, kept)).toBe(least(choice, all));
      }),
      { seed: 50, numRuns: 500 },
    );
  });
});
