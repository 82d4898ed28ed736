import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { best, type ChoiceProgram, type Picks, rivals } from "../../../solver/choice.ts";
import { highsEngine } from "../../../solver/highs-engine.ts";
import type { Engine } from "../../../solver/program.ts";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { costOf, costsByFaces, facesOf, keepsRows } from "../support/exhaustive.ts";
import { anyChoice, treeChoice } from "../support/random-programs.ts";

async function firstOf(choice: ChoiceProgram, engine: Engine = simplexEngine): Promise<Picks | undefined> {
  const first = await best(choice, engine);
  return first.status === "picked" ? first : undefined;
}

const option = (face: string, cost: number) => ({ name: face, face, cost, terms: [] });
/** Two groups that nothing ties together: costs 0, 1, 2, 3, 4, 6 in turn. */
const free: ChoiceProgram = {
  groups: [
    { name: "a", options: [option("a0", 0), option("a1", 1), option("a3", 3)] },
    { name: "b", options: [option("b0", 0), option("b0", 0.5), option("b3", 3)] },
  ],
  rows: [],
};

describe("rivals", () => {
  it("lists the next best, each with other faces than those before", async () => {
    const { list, proven } = await rivals(free, (await firstOf(free))!, 9, simplexEngine);
    expect(list.map(({ cost }) => cost)).toEqual([1, 3, 3, 4, 6]);
    expect(list.every((rival) => rival.proven && rival.bound === rival.cost)).toBe(true);
    expect(proven).toBe(true);
  });

  it("finds the costs of trying everything, with budgets and without", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(anyChoice, treeChoice(false), treeChoice(true)),
        fc.integer({ min: 1, max: 8 }),
        fc.constantFrom(simplexEngine, highsEngine),
        async (choice, count, engine) => {
          const first = await firstOf(choice, engine);
          if (first === undefined) return;
          const { list, proven } = await rivals(choice, first, count, engine);
          const shown = facesOf(choice, first.picks);
          const expected = costsByFaces(choice).filter(([faces]) => faces !== shown);
          expect(proven).toBe(true);
          expect(list.map(({ cost }) => cost)).toEqual(expected.slice(0, count).map(([, cost]) => cost));
          expect(new Set([shown, ...list.map(({ picks }) => facesOf(choice, picks))]).size).toBe(
            list.length + 1,
          );
          for (const { picks, cost } of list) {
            expect(keepsRows(choice, picks)).toBe(true);
            expect(cost).toBe(costOf(choice, picks));
          }
        },
      ),
      { seed: 70, numRuns: 400 },
    );
  });

  it("gives the same list whenever it is asked", async () => {
    await fc.assert(
      fc.asyncProperty(anyChoice, async (choice) => {
        const first = await firstOf(choice);
        if (first === undefined) return;
        const again = structuredClone(choice);
        expect(await rivals(again, (await firstOf(again))!, 5, simplexEngine)).toEqual(
          await rivals(choice, first, 5, simplexEngine),
        );
      }),
      { seed: 71, numRuns: 100 },
    );
  });

  it("lists all others even where the first is not the best", async () => {
    const first = { ...(await firstOf(free))!, picks: [2, 0], cost: 3 };
    const { list } = await rivals(free, first, 3, simplexEngine);
    expect(list.map(({ cost }) => cost)).toEqual([0, 1, 3]);
  });

  it("asks for nothing where nothing is wanted", async () => {
    const never: Engine = () => expect.fail("was asked");
    expect(await rivals(free, (await firstOf(free))!, 0, never)).toEqual({
      list: [],
      proven: true,
      nodes: 0,
    });
  });

  it("gives what it has when the time is over, and does not call it proven", async () => {
    const first = (await firstOf(free))!;
    expect(await rivals(free, first, 3, simplexEngine, { timeLimitMs: 0 })).toMatchObject({
      list: [],
      proven: false,
    });

    let asked = 0;
    const tiring: Engine = async (program, options) => {
      asked += 1;
      return asked <= 2 ? simplexEngine(program, options) : { status: "stopped", nodes: 0, engine: "tired" };
    };
    const { list, proven } = await rivals(free, first, 9, tiring, { timeLimitMs: 60_000 });
    expect(list.map((rival) => [rival.cost, rival.proven, rival.bound])).toEqual([
      [1, true, 1],
      [3, false, 1],
    ]);
    expect(proven).toBe(false);
  });

  it("hands on the engine's note, and its reason where it failed", async () => {
    const first = (await firstOf(free))!;
    const noting: Engine = async (program, options) => ({
      ...(await simplexEngine(program, options)),
      note: "slow",
    });
    expect(await rivals(free, first, 1, noting)).toMatchObject({ note: "slow", proven: true });
    const failing: Engine = async () => ({ status: "failed", reason: "No.", engine: "some" });
    expect(await rivals(free, first, 1, failing)).toEqual({ list: [], proven: false, nodes: 0, note: "No." });
  });
});
