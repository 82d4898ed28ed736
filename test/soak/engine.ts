import { simplexEngine } from "../../solver/simplex-engine.ts";
import { type DifferentialReport, differential } from "../solver/support/differential.ts";

/** The usual engine ends far sooner on programs of these sizes; what takes longer counts as not answered. */
const LONGEST_MS = 5000;

/**
 * The usual engine against HiGHS and GLPK on random programs: those of garments (trees of choices, with ties and with
 * budgets) and others that it could be asked.
 */
export const soakEngine = (count: number, seed: number): Promise<DifferentialReport> =>
  differential(simplexEngine, count, seed, LONGEST_MS);
