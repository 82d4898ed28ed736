import { createGuardedEngine } from "../../solver/guarded-engine.ts";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { type DifferentialReport, differential } from "../solver/support/differential.ts";

/** The usual engine ends far sooner on programs of these sizes; where it takes longer, the guard has to answer. */
const LONGEST_MS = 2000;

/**
 * The usual engine against HiGHS and GLPK on random programs: those of garments (trees of choices, with ties and with
 * budgets) and others that it could be asked.
 */
export async function soakEngine(count: number, seed: number): Promise<DifferentialReport> {
  const guarded = createGuardedEngine();
  try {
    return await differential(simplexEngine, count, seed, LONGEST_MS, guarded.solve);
  } finally {
    await guarded.close();
  }
}
