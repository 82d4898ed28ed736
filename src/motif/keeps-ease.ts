import type { Bounds } from "../cloth/gauge-range.ts";
import type { EaseLimits } from "./motif.ts";

/** By how much rounding in the sums may overstep a limit, as a fraction of ease. */
const easeTolerance = 1e-9;

/** Whether every ease between two bounds is inside its limits; one ease alone is both of its bounds. */
export const keepsEase = ({ least, most }: Bounds, { from, to }: EaseLimits): boolean =>
  least >= from - easeTolerance && most <= to + easeTolerance;
