import type { Stitch } from "../cloth/gauge.ts";
import type { Segment } from "./segments.ts";

/**
 * Length of cord that lies along one segment without slack, in mm: the straight line over the cloth, and for each
 * strand of thickness `thicknessMm` that it passes over the extra of climbing it in the middle,
 * `2 * (hypot(span / 2, t) - span / 2)`. Common practice, no published source.
 */
export function spanMm(segment: Omit<Segment, "name">, stitch: Stitch, thicknessMm = 0): number {
  const straight = Math.hypot(segment.needles * stitch.widthMm, segment.rows * stitch.heightMm);
  return straight + segment.climbs * 2 * (Math.hypot(straight / 2, thicknessMm) - straight / 2);
}

/** How much longer than its path the cord is, as a fraction: 0.02 is 2 % of slack, below 0 it pulls. */
export const easeOf = (pickup: number, cordStitchMm: number, span: number): number =>
  (pickup * cordStitchMm) / span - 1;
