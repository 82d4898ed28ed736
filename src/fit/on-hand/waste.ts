import { needsOf, percentLeft } from "../../on-hand/needs.ts";
import type { Fit } from "../fit.ts";
import { makeTerm, type Term } from "../terms.ts";

/**
 * What is left over of each supply, where as little as can be is to be: in percent of what is on hand, so that metres and
 * grams can be weighed against each other.
 *
 * @param fit without what is worked of unfinished repeats, which decide nothing about it
 */
export function wasteTerms(fit: Omit<Fit, "cost">): readonly Term[] {
  const { onHand, weights } = fit.garment;
  if (!onHand?.leastWaste) return [];
  return needsOf({ ...fit, cost: 0 })
    .map((need) => makeTerm("waste", percentLeft(need), "% left over", weights, { supply: need.supply.of }))
    .filter(({ amount }) => amount > 0);
}
