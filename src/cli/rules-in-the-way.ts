import { duringAll, WorkEnded } from "../fit/allowance.ts";
import { createAnyFit, Undecided } from "../fit/refusal/any-fit.ts";
import { rulesOf } from "../fit/refusal/rules-of.ts";
import { conflictAmong, type NamedRule } from "../fit/refusal.ts";
import type { Garment } from "../garment/garment.ts";
import type { SolveWatch } from "./progress/solve-watch.ts";

/**
 * The rules that keep a garment from fitting, found under a command's watch; undefined where the search ended before
 * they were known, because what is known by then may name rules that have nothing to do with it.
 *
 * @param words what is being done, for the status line
 */
export async function rulesInTheWay(
  garment: Garment,
  watch: SolveWatch,
  words: string,
): Promise<readonly NamedRule[] | undefined> {
  const anyFit = createAnyFit(garment, watch.engine);
  const fits = async (one: Garment): Promise<boolean> => {
    if (!(await watch.turn(words))) throw new WorkEnded("the search was ended");
    return anyFit(one);
  };
  try {
    const { rules } = await duringAll(watch.leftMs(), () => conflictAmong(rulesOf(garment), garment, fits));
    return rules;
  } catch (error) {
    if (error instanceof WorkEnded || error instanceof Undecided) return undefined;
    throw error;
  }
}
