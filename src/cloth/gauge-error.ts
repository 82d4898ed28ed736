/** A swatch is counted to about a quarter of a stitch or a row. Common practice, no published source. */
const countedTo = 0.25;

/**
 * How far off a count of a swatch may be, as a fraction of it.
 *
 * @param within what the garment file says of its gauge, where it does
 */
export const gaugeError = (count: number, within?: number): number => within ?? countedTo / count;
