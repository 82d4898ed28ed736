import { nearest } from "./gauge.ts";

/**
 * Needles to add at each side of a piece so that crossed stitches, which lie closer than plain ones, leave it as
 * wide as its outline: half of the stitches' width that is lost, to the nearest whole needle. How much is lost is
 * the knitter's own measure, from a swatch (a magazine's worked example: a panel of 46 stitches came out as wide
 * as 43.5 plain ones).
 *
 * @param lost width lost across one row, in stitches of the ground
 */
export const extraNeedlesForDrawIn = (lost: number): number => nearest(lost / 2);
