import { describe, expect, it } from "vitest";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { differential, differentialKinds } from "./support/differential.ts";

/** A slice of what the soak runs with thousands. */
const PROGRAMS = 120;

describe("the usual engine beside HiGHS and GLPK", () => {
  it("comes to the same end and the same optimum on random programs", async () => {
    const { kinds, disagreements } = await differential(simplexEngine, PROGRAMS, 7, 20_000);
    expect(disagreements).toEqual([]);
    expect(kinds.map(({ kind }) => kind)).toEqual(differentialKinds);
    for (const { kind, optimal, unanswered } of kinds) {
      expect(unanswered, kind).toBe(0);
      expect(optimal, kind).toBeGreaterThan(0);
    }
  });

  it("is told of an engine that stops at the first whole point", async () => {
    const hasty: typeof simplexEngine = async (program, options) => {
      const stop = new AbortController();
      const outcome = await simplexEngine(program, {
        ...options,
        signal: stop.signal,
        onProgress: ({ point }) => point && stop.abort(),
      });
      if (outcome.status !== "stopped" || outcome.point === undefined || outcome.cost === undefined)
        return outcome;
      const { point, cost, nodes, engine } = outcome;
      return { status: "optimal", point, cost, bound: cost, nodes, engine };
    };
    const { disagreements } = await differential(hasty, PROGRAMS / 2, 7, 20_000);
    expect(disagreements.length).toBeGreaterThan(0);
  });
});
