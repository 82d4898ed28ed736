import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { best, type ChoiceProgram, toProgram } from "../../../solver/choice.ts";
import { highsEngine } from "../../../solver/highs-engine.ts";
import type { Engine, Outcome } from "../../../solver/program.ts";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { costOf, costsByFaces, keepsRows } from "../support/exhaustive.ts";
import { glpkEngine } from "../support/glpk-engine.ts";
import { anyChoice, treeChoice } from "../support/random-programs.ts";

const ends =
  (outcome: Outcome): Engine =>
  async () =>
    outcome;
const option = (cost: number) => ({ name: `${cost}`, cost, face: "", terms: [[0, cost] as const] });
const two: ChoiceProgram = {
  groups: [
    { name: "a", options: [option(1), option(2)] },
    { name: "b", options: [option(3), option(4)] },
  ],
  rows: [{ name: "least", relation: ">=", bound: 5 }],
};

describe("best", () => {
  it("picks one option of each group, proven", async () => {
    expect(await best(two, simplexEngine)).toEqual({
      status: "picked",
      picks: expect.toSatisfy((picks: number[]) => keepsRows(two, picks)),
      cost: 5,
      bound: 5,
      proven: true,
      nodes: 1,
      engine: "javascript-lp-solver",
    });
  });

  it("finds the least cost of trying everything, with each engine, and what HiGHS and GLPK find in the text", async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(anyChoice, treeChoice(false), treeChoice(true)), async (choice) => {
        const least = costsByFaces(choice)[0]?.[1];
        for (const engine of [simplexEngine, highsEngine]) {
          const found = await best(choice, engine);
          if (least === undefined) expect(found.status).toBe("infeasible");
          else {
            if (found.status !== "picked") expect.fail(`ended as ${found.status}`);
            expect(found).toMatchObject({ proven: true });
            expect(found.cost).toBeCloseTo(least, 6);
            expect(found.cost).toBe(costOf(choice, found.picks));
            expect(keepsRows(choice, found.picks)).toBe(true);
          }
        }
        for (const engine of [highsEngine, glpkEngine]) {
          const read = await engine(toProgram(choice).program);
          if (least === undefined) expect(read.status).toBe("infeasible");
          else if (read.status === "optimal") expect(read.cost).toBeCloseTo(least, 6);
          else expect.fail(`ended as ${read.status}`);
        }
      }),
      { seed: 60, numRuns: 300 },
    );
  });

  it("needs no branching where the choices form a tree", async () => {
    await fc.assert(
      fc.asyncProperty(treeChoice(false), async (choice) => {
        const found = await best(choice, simplexEngine);
        if (found.status === "picked") expect(found.nodes).toBe(1);
      }),
      { seed: 61, numRuns: 200 },
    );
  });

  it("does not ask the engine where it is plain that nothing can be picked", async () => {
    const never: Engine = () => expect.fail("was asked");
    expect(await best({ ...two, rows: [{ ...two.rows[0]!, bound: 7 }] }, never)).toMatchObject({
      status: "infeasible",
      nodes: 0,
    });
    expect(await best({ groups: [{ name: "empty", options: [] }], rows: [] }, never)).toMatchObject({
      status: "infeasible",
    });
  });

  it("passes on how the engine ended", async () => {
    const shared = { engine: "some", note: "it took long" };
    expect(await best(two, ends({ status: "infeasible", nodes: 3, ...shared }))).toEqual({
      status: "infeasible",
      nodes: 3,
      ...shared,
    });
    expect(await best(two, ends({ status: "stopped", nodes: 3, ...shared }))).toEqual({
      status: "stopped",
      nodes: 3,
      ...shared,
    });
    expect(await best(two, ends({ status: "failed", reason: "No.", ...shared }))).toEqual({
      status: "failed",
      reason: "No.",
      ...shared,
    });
    expect(await best(two, ends({ status: "unbounded", nodes: 1, ...shared }))).toMatchObject({
      status: "failed",
    });
  });

  it("keeps what a stopped engine had, and does not call it proven", async () => {
    const stopped = {
      status: "stopped",
      point: [0, 1, 1, 0],
      cost: 5,
      bound: 4.5,
      nodes: 9,
      engine: "some",
    } as const;
    expect(await best(two, ends(stopped))).toMatchObject({
      status: "picked",
      picks: [1, 0],
      cost: 5,
      bound: 4.5,
      proven: false,
    });
    const { bound: _, ...boundless } = stopped;
    expect(await best(two, ends(boundless))).toMatchObject({
      bound: Number.NEGATIVE_INFINITY,
      proven: false,
    });
  });

  it("does not take for picks what is none", async () => {
    const point = (values: number[]) =>
      best(two, ends({ status: "optimal", point: values, cost: 0, bound: 0, nodes: 1, engine: "some" }));
    expect(await point([1, 1, 1, 0])).toMatchObject({ status: "failed" });
    expect(await point([0, 0, 1, 0])).toMatchObject({ status: "failed" });
  });
});
