import { describe, expect, test } from "vitest";
import type { Engine, Outcome } from "../../../solver/program.ts";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { createKept } from "../../../src/fit/kept.ts";
import { type Fits, fitGarment } from "../../../src/fit/solve.ts";
import type { Garment } from "../../../src/garment/garment.ts";
import { laid, plait, smallGarment, strip } from "../../support/small-garment.ts";

/** A plait of one look and one way to count it, with 1 to 7 repeats on a strip of 60 rows. */
const garment = (spread = 3): Garment =>
  smallGarment({
    pieces: { front: strip(20, 60) },
    motifs: { plait: plait(4, spread, { ease: { from: "0 %", to: "10 %" } }) },
    place: [
      laid("plait", "front", { bottom: "0..60", top: "0..60" }, { repeats: { allow: "1..7", prefer: 7 } }),
    ],
  });

/** The usual engine, which tells more in its answers and keeps what it is asked with. */
function watched(more: Partial<Outcome>) {
  const asked: Parameters<Engine>[1][] = [];
  const engine: Engine = async (program, options) => {
    asked.push(options);
    return { ...(await simplexEngine(program, options)), ...more } as Outcome;
  };
  return { engine, asked };
}

async function fits(...[file, engine, options]: Parameters<typeof fitGarment>): Promise<Fits> {
  const result = await fitGarment(file, engine, options);
  if (result.status !== "fits") throw new Error(result.status);
  return result;
}

const repeatsIn = ({ fit, rivals }: Fits): readonly number[] =>
  [fit, ...rivals].map(({ placements }) => placements[0]!.repeats);

describe("the best fit", () => {
  test("comes with the five next best, in rising order of cost", async () => {
    const result = await fits(garment(), simplexEngine);
    // Seven repeats are preferred; each fewer costs 1. 60 rows less 4 and 8 for each repeat can always be parted evenly.
    expect(repeatsIn(result)).toEqual([7, 6, 5, 4, 3, 2]);
    expect(result).toMatchObject({ proven: true, rivalsProven: true, notes: [] });
    expect(result.bound).toBeCloseTo(result.fit.cost, 6);
  });

  test.each([
    [0, [7]],
    [1, [7, 6]],
    [6, [7, 6, 5, 4, 3, 2, 1]],
    [9, [7, 6, 5, 4, 3, 2, 1]],
  ])("comes with %d more where so many are wanted and there are", async (rivals, repeats) => {
    const result = await fits(garment(), simplexEngine, { rivals });
    expect(repeatsIn(result)).toEqual(repeats);
    expect(result.rivalsProven).toBe(true);
  });

  test("tells as its rivals are found", async () => {
    const told: (readonly number[])[] = [];
    await fits(garment(), simplexEngine, { rivals: 2, onRivals: (...now) => told.push(now) });
    expect(told).toEqual([
      [0, 2],
      [1, 2],
      [2, 2],
    ]);
  });

  test("tells the nodes of its own and of all", async () => {
    const { engine, asked } = watched({ nodes: 10 });
    const { bestNodes, nodes } = await fits(garment(), engine, { rivals: 2 });
    expect(bestNodes).toBe(10);
    expect(asked.length).toBeGreaterThan(2);
    expect(nodes).toBe(10 * asked.length);
  });

  test("tells once what the engine has to say", async () => {
    const { engine } = watched({ note: "another engine answered" });
    const result = await fits(garment(), engine, { rivals: 2 });
    expect(result.notes).toEqual(["another engine answered"]);
  });

  test("may not be proven where the engine was stopped", async () => {
    const { engine } = watched({ status: "stopped", bound: -1 });
    const result = await fits(garment(), engine, { rivals: 1 });
    expect(result).toMatchObject({ proven: false, rivalsProven: false });
    expect(result.bound).toBeLessThan(result.fit.cost);
  });

  test("has the engine keep the time that is left, and no limit without one", async () => {
    const limited = watched({});
    await fits(garment(), limited.engine, { rivals: 1, timeLimitMs: 60_000 });
    expect(limited.asked.length).toBeGreaterThan(1);
    for (const options of limited.asked) {
      expect(options!.timeLimitMs).toBeGreaterThan(0);
      expect(options!.timeLimitMs).toBeLessThanOrEqual(60_000);
    }
    const free = watched({});
    await fits(garment(), free.engine, { rivals: 1 });
    for (const options of free.asked) expect(options?.timeLimitMs).toBeUndefined();
  });

  test("keeps what is worked out for it where it is given something to keep it in", async () => {
    const kept = createKept();
    const asked: string[] = [];
    const once = await fits(garment(), simplexEngine, {
      kept: (of, make) => {
        asked.push(of);
        return kept(of, make);
      },
    });
    expect(asked.length).toBeGreaterThan(0);
    expect(once).toEqual(await fits(garment(), simplexEngine));
  });
});

describe("where there is no fit", () => {
  const always =
    (outcome: Outcome): Engine =>
    async () =>
      outcome;

  test("it is told without asking the engine where a motif has no room by itself", async () => {
    const engine: Engine = () => Promise.reject(new Error("asked"));
    expect(await fitGarment(garment(11), engine)).toEqual({ status: "does not fit", nodes: 0, notes: [] });
  });

  test("it is told with the nodes it took to be sure", async () => {
    const nothing = always({ status: "infeasible", nodes: 3, engine: "one" });
    expect(await fitGarment(garment(), nothing)).toEqual({ status: "does not fit", nodes: 3, notes: [] });
    const noted = always({ status: "infeasible", nodes: 3, engine: "one", note: "the other answered" });
    expect(await fitGarment(garment(), noted)).toMatchObject({ notes: ["the other answered"] });
  });

  test("why the engine gave no answer is told in its words", async () => {
    const tired = always({ status: "failed", reason: "the engine gave up", engine: "one" });
    expect(await fitGarment(garment(), tired)).toEqual({
      status: "stopped",
      reason: "the engine gave up",
      nodes: 0,
      notes: [],
    });
  });

  test("it is told that the time was up", async () => {
    const late = always({ status: "stopped", nodes: 5, engine: "one", note: "the other answered" });
    expect(await fitGarment(garment(), late)).toEqual({
      status: "stopped",
      reason: "the time allowed was up before a fit was found",
      nodes: 5,
      notes: ["the other answered"],
    });
  });

  test("it is told that the time was up before the engine was asked", async () => {
    const engine: Engine = () => Promise.reject(new Error("asked"));
    expect(await fitGarment(garment(), engine, { timeLimitMs: -1 })).toEqual({
      status: "stopped",
      reason: "the time allowed was up before a fit was found",
      nodes: 0,
      notes: [],
    });
  });

  test("a fault of the program is not taken for one", async () => {
    const kept = () => {
      throw new Error("a fault");
    };
    await expect(fitGarment(garment(), simplexEngine, { kept })).rejects.toThrow("a fault");
  });
});
