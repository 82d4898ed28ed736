import type { Range } from "./range.ts";

/** A cord is knitted tighter or looser than the ground by about this much; derived, to be measured on a sample. */
const cordTension = 0.1;

/**
 * Yarn in one cord stitch, in metres: one loop on each of its needles, and one float back over all but one of them,
 * at most as long as those stitches are wide. Derived, no published source; weighing a piece of cord is surer.
 *
 * @param loop yarn in one stitch of the ground
 * @param stitchMetres width of one stitch of the ground
 */
export function cordStitchMetres(needles: number, loop: Range, stitchMetres: number): Range {
  const float = (needles - 1) * stitchMetres;
  return {
    least: needles * loop.least * (1 - cordTension),
    about: needles * loop.about + float,
    most: needles * loop.most * (1 + cordTension) + float,
  };
}
