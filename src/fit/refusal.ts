import { best } from "../../solver/choice.ts";
import type { Engine } from "../../solver/program.ts";
import type { Garment } from "../garment/garment.ts";
import { enumerate } from "./enumerate.ts";
import { formulate } from "./formulate.ts";
import type { NamedRule } from "./refusal/rule.ts";
import { rulesOf } from "./refusal/rules-of.ts";

export type { NamedRule } from "./refusal/rule.ts";

/** Rules that cannot hold together, none of which can be left out; empty where something else is in the way. */
export interface Breakdown {
  readonly rules: readonly NamedRule[];
  /** Whether a fit exists once all of them are lifted. */
  readonly liftable: boolean;
}

/** The rules that keep a garment from fitting. */
export const breakDown = (garment: Garment, engine: Engine): Promise<Breakdown> =>
  conflictAmong(rulesOf(garment), garment, (one) => hasFit(one, engine));

/**
 * Which of some rules cannot hold together. Each rule in turn is lifted; where there is still no fit it was not
 * what stood in the way and stays lifted, where there is one it belongs to the conflict and is put back
 * (the deletion filter: J. W. Chinneck and E. W. Dravnieks, ORSA Journal on Computing 3, 1991; from memory).
 *
 * @param fits whether something fits under the rules of a garment
 */
export async function conflictAmong(
  rules: readonly NamedRule[],
  garment: Garment,
  fits: (garment: Garment) => Promise<boolean>,
): Promise<Breakdown> {
  const allLifted = rules.reduce((one, rule) => rule.lift(one), garment);
  if (!(await fits(allLifted))) return { rules: [], liftable: false };
  let lifted = garment;
  const conflict: NamedRule[] = [];
  for (const rule of rules) {
    const without = rule.lift(lifted);
    if (await fits(without)) conflict.push(rule);
    else lifted = without;
  }
  return { rules: conflict, liftable: true };
}

/** Whether anything fits at all, whatever it costs. */
export async function hasFit(garment: Garment, engine: Engine): Promise<boolean> {
  const choices = enumerate(garment, { fits: 1, anyLayout: true });
  if (choices.looks.some((looks) => looks.length === 0)) return false;
  if (choices.layouts.some((layouts) => layouts.length === 0)) return false;
  return (await best(formulate(choices), engine, {})).status === "picked";
}
