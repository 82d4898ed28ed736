import { type Fit, lookOf } from "../../fit/fit.ts";
import { isMirroredAsWorn } from "../../motif/worn-side.ts";

/** Whether the side that faces the knitter is worn, or the one on the far side of the bed. */
export type WornSide = "facing" | "far";

/**
 * Which side of a piece is worn. Its own motifs decide, a cord before a cable because a cord on the inside would not
 * be seen; a piece without any goes with the rest of the garment, and without a cord the knit side, which is the far
 * one, is worn.
 */
export function wornSideOf(fit: Fit, piece: string): WornSide {
  const facing = (placements: Fit["placements"]): boolean =>
    placements.some(({ motif }) => !isMirroredAsWorn(lookOf(fit, motif).motif.kind));
  const own = fit.placements.filter((placement) => placement.piece === piece);
  return facing(own.length > 0 ? own : fit.placements) ? "facing" : "far";
}
