import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { violations } from "../../../solver/feasibility.ts";
import type { Column, Engine, Outcome, Program, Progress, Relation, Row } from "../../../solver/program.ts";
import { leastCost } from "./exhaustive.ts";
import { knapsacks } from "./knapsacks.ts";
import { wholeProgram } from "./random-programs.ts";

const column = (cost: number, more: Partial<Column> = {}): Column => ({
  name: "x",
  cost,
  whole: false,
  ...more,
});
const row = (terms: Row["terms"], relation: Relation, bound: number, name = "r"): Row => ({
  name,
  terms,
  relation,
  bound,
});

function expectOptimum(program: Program, outcome: Outcome, cost: number, point?: readonly number[]): void {
  if (outcome.status !== "optimal") expect.fail(`ended as ${JSON.stringify(outcome)}`);
  expect(outcome.cost).toBeCloseTo(cost, 6);
  expect(outcome.bound).toBeCloseTo(cost, 6);
  expect(outcome.nodes).toBeGreaterThanOrEqual(program.columns.length === 0 ? 0 : 1);
  expect(violations(program, outcome.point)).toEqual([]);
  if (point !== undefined)
    outcome.point.forEach((value, index) => {
      expect(value).toBeCloseTo(point[index]!, 6);
    });
}

const costAt = ({ columns }: Program, point: readonly number[]): number =>
  columns.reduce((sum, { cost }, index) => sum + cost * point[index]!, 0);

/**
 * What every engine behind the interface must do.
 *
 * @param refuses whether it is asked to refuse what is no program
 * @param tells whether it is asked to tell how far it has come, and to stop when it is told to
 */
export function conformingEngine(
  name: string,
  engine: () => Engine,
  { refuses = true, tells = true } = {},
): void {
  const solve = (program: Program) => engine()(program);

  describe(`${name} as an engine`, () => {
    it("finds an optimum between columns", async () => {
      const program = {
        columns: [column(-3), column(-2)],
        rows: [
          row(
            [
              [0, 1],
              [1, 1],
            ],
            "<=",
            4,
          ),
          row(
            [
              [0, 1],
              [1, 3],
            ],
            "<=",
            6,
          ),
          row([[0, 1]], "<=", 3),
        ],
      };
      expectOptimum(program, await solve(program), -11, [3, 1]);
    });

    it("keeps equality rows and rows from below", async () => {
      const program = {
        columns: [column(2), column(3)],
        rows: [
          row(
            [
              [0, 1],
              [1, 1],
            ],
            "=",
            5,
          ),
          row([[1, 1]], ">=", 2),
        ],
      };
      expectOptimum(program, await solve(program), 12, [3, 2]);
    });

    it("branches where whole values ask for it", async () => {
      const program = {
        columns: [column(-5, { whole: true }), column(-4, { whole: true })],
        rows: [
          row(
            [
              [0, 6],
              [1, 4],
            ],
            "<=",
            24,
          ),
          row(
            [
              [0, 1],
              [1, 2],
            ],
            "<=",
            6,
          ),
        ],
      };
      expectOptimum(program, await solve(program), -20, [4, 0]);
    });

    it("leaves columns fractional that may be", async () => {
      const program = {
        columns: [column(-1, { whole: true }), column(-1)],
        rows: [
          row(
            [
              [0, 2],
              [1, 1],
            ],
            "<=",
            2.5,
          ),
          row(
            [
              [0, 1],
              [1, 1],
            ],
            "<=",
            1.75,
          ),
        ],
      };
      expectOptimum(program, await solve(program), -1.75);
    });

    it("says that a program has no point", async () => {
      const columns = [column(1, { whole: true, upper: 1 })];
      expect(await solve({ columns, rows: [row([[0, 1]], ">=", 2)] })).toMatchObject({
        status: "infeasible",
      });
      expect(await solve({ columns, rows: [row([[0, 2]], "=", 1)] })).toMatchObject({ status: "infeasible" });
      expect(await solve({ columns: [column(1, { upper: -1 })], rows: [] })).toMatchObject({
        status: "infeasible",
      });
    });

    it("says that a cost falls without end", async () => {
      const program = {
        columns: [column(-1), column(0)],
        rows: [
          row(
            [
              [0, 1],
              [1, -1],
            ],
            "<=",
            1,
          ),
        ],
      };
      expect(await solve(program)).toMatchObject({ status: "unbounded" });
    });

    it("judges rows that no column enters", async () => {
      const columns = [column(1, { upper: 3 })];
      const holds = {
        columns,
        rows: [
          row([], "<=", 0),
          row(
            [
              [0, 1],
              [0, -1],
            ],
            ">=",
            -1,
          ),
        ],
      };
      expectOptimum(holds, await solve(holds), 0, [0]);
      expect(await solve({ columns, rows: [row([], ">=", 1)] })).toMatchObject({ status: "infeasible" });
      expect(
        await solve({
          columns,
          rows: [
            row(
              [
                [0, 1],
                [0, -1],
              ],
              "=",
              2,
            ),
          ],
        }),
      ).toMatchObject({
        status: "infeasible",
      });
    });

    it("solves programs without rows and without columns", async () => {
      const noRows = { columns: [column(2), column(-1, { upper: 2.5 })], rows: [] };
      expectOptimum(noRows, await solve(noRows), -2.5, [0, 2.5]);
      const nothing = { columns: [], rows: [] };
      expectOptimum(nothing, await solve(nothing), 0, []);
      expect(await solve({ columns: [], rows: [row([], "=", 1)] })).toMatchObject({ status: "infeasible" });
    });

    it("keeps columns and rows apart whose names are the same or mean something to a program", async () => {
      const names = [
        "result",
        "feasible",
        "bounded",
        "isIntegral",
        "constructor",
        "__proto__",
        "x",
        "x",
        "",
        "cost",
      ];
      const program = {
        columns: names.map((name, index) => column(-index - 1, { name, whole: true, upper: 1 })),
        rows: [
          ...names.map((name, index) => row([[index, 1]], "<=", index % 2, name)),
          row(
            names.map((_, index) => [index, 1] as const),
            "<=",
            4,
            "__proto__",
          ),
        ],
      };
      expectOptimum(program, await solve(program), -28, [0, 0, 0, 1, 0, 1, 0, 1, 0, 1]);
    });

    it("gives a value to columns that are zero, fixed or nowhere mentioned", async () => {
      const program = {
        columns: [column(1), column(-1, { upper: 0 }), column(0), column(4)],
        rows: [row([[3, 1]], "=", 2)],
      };
      expectOptimum(program, await solve(program), 8);
    });

    it("adds up a column that a row names twice", async () => {
      const program = {
        columns: [column(-1)],
        rows: [
          row(
            [
              [0, 1],
              [0, 2],
            ],
            "<=",
            6,
          ),
        ],
      };
      expectOptimum(program, await solve(program), -2, [2]);
    });

    if (refuses)
      it("refuses numbers that are not finite and columns that are not there", async () => {
        const good = { columns: [column(1)], rows: [row([[0, 1]], ">=", 1)] };
        const bad: Program[] = [Number.NaN, Number.POSITIVE_INFINITY].flatMap((number) => [
          { ...good, columns: [column(number)] },
          { ...good, columns: [column(1, { upper: number })] },
          { ...good, rows: [row([[0, number]], ">=", 1)] },
          { ...good, rows: [row([[0, 1]], ">=", number)] },
        ]);
        for (const program of [...bad, { ...good, rows: [row([[1, 1]], ">=", 1)] }])
          expect(await solve(program)).toMatchObject({
            status: "failed",
            reason: expect.stringMatching(/\w/),
          });
      });

    it("agrees with trying every point of small programs", async () => {
      await fc.assert(
        fc.asyncProperty(wholeProgram, async (program) => {
          const least = leastCost(program);
          const outcome = await solve(program);
          if (least === undefined) expect(outcome.status).toBe("infeasible");
          else expectOptimum(program, outcome, least);
        }),
        { seed: 20, numRuns: 300 },
      );
    });

    it("keeps the optimum where the program changes in nothing that matters", async () => {
      await fc.assert(
        fc.asyncProperty(wholeProgram, async (program) => {
          const outcome = await solve(program);
          if (outcome.status !== "optimal") return;
          const { cost, point } = outcome;
          const idle = { ...program, columns: [...program.columns, column(1, { whole: true, upper: 1 })] };
          expectOptimum(idle, await solve(idle), cost);
          const [first] = program.rows;
          if (first === undefined) return;
          const doubled = {
            ...first,
            terms: first.terms.map(([at, by]) => [at, 2 * by] as const),
            bound: 2 * first.bound,
          };
          const twice = { ...program, rows: [...program.rows, doubled] };
          expectOptimum(twice, await solve(twice), cost);
          const used = first.terms.reduce((sum, [at, by]) => sum + by * point[at]!, 0);
          const cut = {
            ...program,
            rows: [...program.rows, { ...first, relation: "=" as const, bound: used }],
          };
          expectOptimum(cut, await solve(cut), cost);
        }),
        { seed: 21, numRuns: 100 },
      );
    });

    it("keeps the optimum where a row that has slack is relaxed", async () => {
      const rows = [
        row(
          [
            [0, 1],
            [1, 1],
          ],
          "<=",
          3,
        ),
        row([[0, 1]], "<=", 9),
      ];
      const program = { columns: [column(-2, { whole: true }), column(-1, { whole: true })], rows };
      const relaxed = { ...program, rows: [rows[0]!, row([[0, 1]], "<=", 90)] };
      const [tight, loose] = [await solve(program), await solve(relaxed)];
      expectOptimum(program, tight, -6, [3, 0]);
      expectOptimum(relaxed, loose, -6, [3, 0]);
    });

    if (tells) {
      it("tells how far it has come, and stops with that when it is told to", async () => {
        const program = knapsacks(80, 12);
        const stop = new AbortController();
        const told: Progress[] = [];
        const outcome = await engine()(program, {
          signal: stop.signal,
          onProgress: (progress) => {
            told.push(progress);
            if (progress.bound !== undefined) stop.abort();
          },
        });
        if (outcome.status !== "stopped") expect.fail(`ended as ${JSON.stringify(outcome)}`);
        expect(outcome.bound).toBeGreaterThanOrEqual(told.at(-1)!.bound!);
        expect(outcome.bound).toBeLessThanOrEqual(outcome.cost ?? 0);
        if (outcome.point !== undefined) expect(violations(program, outcome.point)).toEqual([]);
        for (const { point, best } of told) {
          if (point === undefined) continue;
          expect(violations(program, point)).toEqual([]);
          expect(costAt(program, point)).toBeCloseTo(best!, 9);
          expect(outcome.cost).toBeLessThanOrEqual(best!);
        }
      });

      it("tells a bound that rises and a best that falls, and never one beyond the optimum", async () => {
        const program = knapsacks(30, 4);
        const told: Progress[] = [];
        const outcome = await engine()(program, { onProgress: (progress) => told.push(progress) });
        if (outcome.status !== "optimal") expect.fail(`ended as ${JSON.stringify(outcome)}`);
        let [nodes, bound, best] = [0, -Infinity, Infinity];
        for (const progress of told) {
          expect(progress.nodes).toBeGreaterThanOrEqual(nodes);
          expect(progress.bound ?? bound).toBeGreaterThanOrEqual(bound);
          expect(progress.best ?? best).toBeLessThanOrEqual(best);
          [nodes, bound, best] = [progress.nodes, progress.bound ?? bound, progress.best ?? best];
        }
        expect(bound).toBeLessThanOrEqual(outcome.cost + 1e-6);
        expect(best).toBeGreaterThanOrEqual(outcome.cost - 1e-6);
      });

      it("does not begin what it is told to stop beforehand", async () => {
        const outcome = await engine()(knapsacks(80, 12), { signal: AbortSignal.abort() });
        expect(outcome).toMatchObject({ status: "stopped", nodes: 0 });
        expect(outcome).not.toHaveProperty("point");
      });
    }
  });
}
