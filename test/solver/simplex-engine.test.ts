import { describe, expect, it } from "vitest";
import type { Program } from "../../solver/program.ts";
import { simplexEngine, solveBySimplex } from "../../solver/simplex-engine.ts";
import { conformingEngine } from "./support/engine-conformance.ts";

conformingEngine("javascript-lp-solver", () => simplexEngine);

/** Pairs of items of which a budget lets few in: hard enough to branch many times. */
const budgeted: Program = {
  columns: Array.from({ length: 60 }, (_, item) => ({
    name: `item ${item}`,
    cost: -(100 + ((item * 37) % 41)),
    whole: true,
    upper: 1,
  })),
  rows: [0, 1, 2].map((budget) => ({
    name: `budget ${budget}`,
    terms: Array.from({ length: 60 }, (_, item) => [item, 50 + ((item * (31 + 12 * budget)) % 53)] as const),
    relation: "<=",
    bound: 1900,
  })),
};

describe("solveBySimplex", () => {
  it("needs one node where the relaxation is whole already", () => {
    const outcome = solveBySimplex({
      columns: [
        { name: "a", cost: 2, whole: true, upper: 1 },
        { name: "b", cost: 1, whole: true, upper: 1 },
      ],
      rows: [
        {
          name: "one",
          terms: [
            [0, 1],
            [1, 1],
          ],
          relation: "=",
          bound: 1,
        },
      ],
    });
    expect(outcome).toMatchObject({ status: "optimal", nodes: 1, point: [0, 1] });
  });

  it("counts the nodes it branches into", () => {
    const outcome = solveBySimplex({
      columns: [
        { name: "a", cost: -5, whole: true },
        { name: "b", cost: -4, whole: true },
      ],
      rows: [
        {
          name: "r",
          terms: [
            [0, 2],
            [1, 2],
          ],
          relation: "<=",
          bound: 3,
        },
      ],
    });
    expect(outcome).toMatchObject({ status: "optimal", cost: -5 });
    expect("nodes" in outcome && outcome.nodes).toBeGreaterThan(1);
  });

  it("says that it was stopped, with a bound below what it has, when its time is over", () => {
    // A bound is known once the root is solved, which takes a busy machine longer than the least of these.
    const outcomes = [1, 8, 64].map((timeLimitMs) => solveBySimplex(budgeted, { timeLimitMs }));
    const stopped = outcomes.filter((outcome) => outcome.status === "stopped");
    expect(stopped).toContain(outcomes[0]);
    const bounds = stopped.flatMap(({ bound, cost = Infinity }) =>
      bound === undefined ? [] : [{ bound, cost }],
    );
    expect(bounds.length).toBeGreaterThan(0);
    for (const { bound, cost } of bounds) expect(bound).toBeLessThanOrEqual(cost);
  });

  it("does not take a limit of no time at all for no limit", () => {
    expect(solveBySimplex(budgeted, { timeLimitMs: 0 }).status).toBe("stopped");
  });

  it("refuses coefficients by which it cannot tell whole values", () => {
    const program = (whole: boolean): Program => ({
      columns: [
        { name: "n", cost: 1, whole: false },
        { name: "used", cost: 1, whole, upper: 1 },
      ],
      rows: [
        { name: "least", terms: [[0, 1]], relation: ">=", bound: 1 },
        {
          name: "big",
          terms: [
            [0, 1],
            [1, -1e8],
          ],
          relation: "<=",
          bound: 0,
        },
      ],
    });
    expect(solveBySimplex(program(true))).toMatchObject({
      status: "failed",
      reason: expect.stringContaining("big"),
    });
    expect(solveBySimplex(program(false))).toMatchObject({ status: "optimal" });
  });

  it("does not change the program that it is given", () => {
    const before = structuredClone(budgeted);
    solveBySimplex(budgeted, { timeLimitMs: 1 });
    expect(budgeted).toEqual(before);
  });
});
