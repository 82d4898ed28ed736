import type { CordGauge, Gauge } from "../garment/garment.ts";

/** One stitch of the ground, in mm. */
export interface Stitch {
  readonly widthMm: number;
  readonly heightMm: number;
}

export const groundStitch = ({ ground }: Pick<Gauge, "ground">): Stitch => ({
  widthMm: ground.overMm / ground.stitches,
  heightMm: ground.overMm / ground.rows,
});

/** Length of one cord stitch (one round of the cord), in mm. */
export const cordStitchMm = (cord: CordGauge): number => cord.overMm / cord.stitches;

/**
 * Nearest whole number, halves upward. The tolerance absorbs what the division of two measured lengths loses,
 * so that 22.5 needles read from millimetres round as 22.5 does and not as 22.499999999999996.
 */
export const nearest = (value: number): number => Math.floor(value + 0.5 + roundingTolerance);

/** Whole steps that fit into a length; the same tolerance keeps an exact multiple whole. */
export const wholeWithin = (value: number): number => Math.floor(value + roundingTolerance);

const roundingTolerance = 1e-9;

/** The even number of needles nearest to a width: a piece symmetric about the centre has as many on each side. */
export const halfNeedles = (widthMm: number, stitch: Stitch): number => nearest(widthMm / stitch.widthMm / 2);
