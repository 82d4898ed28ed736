import { type Fit, lookOf } from "../../fit/fit.ts";
import { isMirroredAsWorn } from "../../motif/worn-side.ts";
import type { Scene } from "../scene.ts";

/**
 * Which side of a piece is worn. Its own motifs decide, a cord before a cable because a cord on the inside would not
 * be seen; a piece without any goes with the rest of the garment, and without a cord the knit side, which is the far
 * one, is worn.
 */
export function wornSideOf(fit: Fit, piece: string): Scene["worn"] {
  const facing = (placements: Fit["placements"]): boolean =>
    placements.some(({ motif }) => !isMirroredAsWorn(lookOf(fit, motif).motif.kind));
  const own = fit.placements.filter((placement) => placement.piece === piece);
  return facing(own.length > 0 ? own : fit.placements) ? "facing" : "far";
}
