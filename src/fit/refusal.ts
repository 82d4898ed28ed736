import type { Engine } from "../../solver/program.ts";
import type { Garment } from "../garment/garment.ts";
import { createAnyFit, Undecided } from "./refusal/any-fit.ts";
import type { NamedRule } from "./refusal/rule.ts";
import { rulesOf } from "./refusal/rules-of.ts";

export type { NamedRule } from "./refusal/rule.ts";

/** Rules that cannot hold together, none of which can be left out; empty where something else is in the way. */
export interface Breakdown {
  readonly rules: readonly NamedRule[];
  /** Whether a fit exists once all of them are lifted. */
  readonly liftable: boolean;
}

/** The rules that keep a garment from fitting; where the engine comes to no answer, nothing is taken to fit. */
export function breakDown(garment: Garment, engine: Engine): Promise<Breakdown> {
  const anyFit = createAnyFit(garment, engine);
  const fits = async (one: Garment): Promise<boolean> => {
    try {
      return await anyFit(one);
    } catch (error) {
      if (error instanceof Undecided) return false;
      throw error;
    }
  };
  return conflictAmong(rulesOf(garment), garment, fits);
}

/**
 * Which of some rules cannot hold together. Each rule in turn is lifted; where there is still no fit it was not
 * what stood in the way and stays lifted, where there is one it belongs to the conflict and is put back
 * (the deletion filter: J. W. Chinneck and E. W. Dravnieks, ORSA Journal on Computing 3, 1991; from memory).
 *
 * @param fits whether something fits under the rules of a garment
 * @param left told again and again which rules are left: they cannot hold together, but some may not be needed for that
 */
export async function conflictAmong(
  rules: readonly NamedRule[],
  garment: Garment,
  fits: (garment: Garment) => Promise<boolean>,
  left: (rules: readonly NamedRule[]) => void = () => {},
): Promise<Breakdown> {
  const allLifted = rules.reduce((one, rule) => rule.lift(one), garment);
  if (!(await fits(allLifted))) return { rules: [], liftable: false };
  let lifted = garment;
  const conflict: NamedRule[] = [];
  for (const [index, rule] of rules.entries()) {
    const without = rule.lift(lifted);
    if (await fits(without)) conflict.push(rule);
    else lifted = without;
    left([...conflict, ...rules.slice(index + 1)]);
  }
  return { rules: conflict, liftable: true };
}
