import fc from "fast-check";
import { differentialKinds } from "../solver/support/differential.ts";
import { soakEngine } from "./engine.ts";
import { must, type Outcome, type Target, targetOf } from "./target.ts";

/** One program of each kind an input, put to the usual engine, to HiGHS and to GLPK: 5,000 programs in a usual run. */
export const enginePrograms: Target = targetOf<number>({
  name: "programs of each kind",
  usual: 5000 / differentialKinds.length,
  longestMs: 120_000,
  inputs: () => fc.integer({ min: 1, max: 2 ** 30 }),
  attempt:
    async () =>
    async (seed): Promise<Outcome> => {
      const { disagreements } = await soakEngine(differentialKinds.length, seed);
      must(disagreements.length === 0, `engines disagree: ${JSON.stringify(disagreements)}`);
      return "accepted";
    },
});
