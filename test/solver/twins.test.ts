import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toProgram } from "../../solver/choice.ts";
import { violations } from "../../solver/feasibility.ts";
import { solveBySimplex } from "../../solver/simplex-engine.ts";
import { mergeTwins } from "../../solver/twins.ts";
import { anyChoice, treeChoice } from "./support/random-programs.ts";

const taken = (name: string, cost: number) => ({ name, cost, whole: true, upper: 1 });

describe("mergeTwins", () => {
  it("makes one column of columns that rows hold equal, through others too", () => {
    const { program, expand } = mergeTwins({
      columns: [taken("a", 1), taken("b", 2), taken("c", 4), taken("d", 8)],
      rows: [
        {
          name: "one",
          terms: [
            [0, 1],
            [3, 1],
          ],
          relation: "=",
          bound: 1,
        },
        {
          name: "ab",
          terms: [
            [0, 1],
            [1, -1],
          ],
          relation: "=",
          bound: 0,
        },
        {
          name: "bc",
          terms: [
            [1, 2],
            [2, -2],
          ],
          relation: "=",
          bound: 0,
        },
        {
          name: "one again",
          terms: [
            [3, 1],
            [2, 1],
          ],
          relation: "=",
          bound: 1,
        },
      ],
    });
    expect(program.columns.map(({ cost }) => cost)).toEqual([7, 8]);
    expect(program.rows.map(({ name }) => name)).toEqual(["one"]);
    expect(expand([1, 0])).toEqual([1, 1, 1, 0]);
  });

  it("leaves columns apart that are not of one kind or not held equal", () => {
    const columns = [taken("a", 1), { ...taken("b", 1), whole: false }, taken("c", 1)];
    const given = {
      columns,
      rows: [
        {
          name: "kinds",
          terms: [
            [0, 1],
            [1, -1],
          ] as const,
          relation: "=" as const,
          bound: 0,
        },
        {
          name: "other",
          terms: [
            [0, 1],
            [2, -2],
          ] as const,
          relation: "=" as const,
          bound: 0,
        },
        {
          name: "apart",
          terms: [
            [0, 1],
            [2, -1],
          ] as const,
          relation: "=" as const,
          bound: 1,
        },
        {
          name: "at most",
          terms: [
            [0, 1],
            [2, -1],
          ] as const,
          relation: "<=" as const,
          bound: 0,
        },
      ],
    };
    expect(mergeTwins(given).program).toEqual(given);
  });

  it("keeps a row that cancels out and does not hold", () => {
    const rows = [
      {
        name: "same",
        terms: [
          [0, 1],
          [1, -1],
        ] as const,
        relation: "=" as const,
        bound: 0,
      },
      {
        name: "differ",
        terms: [
          [0, 1],
          [1, -1],
        ] as const,
        relation: "=" as const,
        bound: 1,
      },
    ];
    const { program } = mergeTwins({ columns: [taken("a", 1), taken("b", 1)], rows });
    expect(program.rows).toEqual([{ ...rows[1], terms: [] }]);
  });

  it("leaves a tree of choices one row", () => {
    const link = (key: number, sign: number) => [[key, sign]] as const;
    const group = (name: string, sign: number) => ({
      name,
      options: [0, 1, 2].map((key) => ({ name: `${key}`, face: "", cost: key, terms: link(key, sign) })),
    });
    const rows = [0, 1, 2].map((key) => ({ name: `link ${key}`, relation: "=" as const, bound: 0 }));
    const { program } = mergeTwins(
      toProgram({ groups: [group("look", -1), group("place", 1)], rows }).program,
    );
    expect([program.columns.length, program.rows.length]).toEqual([3, 1]);
  });

  it("keeps the optimum, at a point of the program it was given", () => {
    fc.assert(
      fc.property(fc.oneof(anyChoice, treeChoice(false), treeChoice(true)), (choice) => {
        const { program } = toProgram(choice);
        const merged = mergeTwins(program);
        const [whole, small] = [solveBySimplex(program), solveBySimplex(merged.program)];
        expect(small.status).toBe(whole.status);
        if (small.status !== "optimal" || whole.status !== "optimal") return;
        expect(small.cost).toBeCloseTo(whole.cost, 6);
        expect(violations(program, merged.expand(small.point))).toEqual([]);
      }),
      { seed: 40, numRuns: 300 },
    );
  });
});
