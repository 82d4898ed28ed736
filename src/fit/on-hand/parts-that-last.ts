import { lasts, needsOf } from "../../on-hand/needs.ts";
import type { Fit, FittedPlacement } from "../fit.ts";

/**
 * Unfinished repeats are worked as far as what is on hand lasts: one after the other in the order of the file, each as far
 * as there is room for it or not at all. They decide nothing about the fit.
 *
 * @param fit without them
 * @param worked its placements with all of them
 */
export function partsThatLast(fit: Fit, worked: readonly FittedPlacement[]): readonly FittedPlacement[] {
  let placements = fit.placements;
  for (const [index, placement] of worked.entries()) {
    const more = placements.with(index, placement);
    if (lasts(needsOf({ ...fit, placements: more }))) placements = more;
  }
  return placements;
}
