import type { Stitch } from "../cloth/gauge.ts";

/** Millimetres by which rounding in the sums may overstep a limit. */
const loopTolerance = 1e-6;

/** The cord between two hangings, and where they lie to each other. */
export interface LoopSegment {
  readonly needles: number;
  readonly rows: number;
  /** Cord stitches between the two. */
  readonly pickup: number;
}

/** How far it is round the loop that a cord forms with the cloth between two hangings, in mm: cord length + cloth length. */
export const loopMm = (
  { needles, rows, pickup }: LoopSegment,
  stitch: Stitch,
  cordStitchMm: number,
): number => pickup * cordStitchMm + Math.hypot(needles * stitch.widthMm, rows * stitch.heightMm);

/** @param mostMm undefined where loops have no limit */
export const keepsLoop = (loop: number, mostMm: number | undefined): boolean =>
  mostMm === undefined || loop <= mostMm + loopTolerance;
