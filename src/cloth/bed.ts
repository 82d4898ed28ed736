/**
 * Needle names and places. A needle is a signed whole number counted outward from the centre of the bed:
 * -1 is L1, +1 is R1, and there is no needle 0. A *boundary* is the place between two needles, counted in
 * needles from the centre (0 = between L1 and R1), so needle n lies between two neighbouring boundaries.
 */

/** Middle of a needle, in needles from the centre of the bed: L1 is -0.5, R1 is +0.5. */
export const position = (needle: number): number => (needle > 0 ? needle - 0.5 : needle + 0.5);

/** The needle whose middle is at `place` (a whole number and a half). */
export const needleAt = (place: number): number => (place > 0 ? place + 0.5 : place - 0.5);

/** Needles from one needle to another, as `position` measures them; always at least 0. */
export const needlesAcross = (from: number, to: number): number => Math.abs(position(to) - position(from));

/** The needle that lies `needle` needles from a centre that is itself at boundary `centre`. */
export const needleFrom = (centre: number, needle: number): number => needleAt(centre + position(needle));

/** "L12" or "R3". */
export const needleName = (needle: number): string => (needle < 0 ? `L${-needle}` : `R${needle}`);

/** First and last needle of those between two boundaries, as a pair from left to right. */
export const needlesBetween = (left: number, right: number): NeedleRange => [
  needleAt(left + 0.5),
  needleAt(right - 0.5),
];

/** First and last needle, both included, from left to right. */
export type NeedleRange = readonly [first: number, last: number];

/** How many needles a range holds. */
export const needleCount = ([first, last]: NeedleRange): number => needlesAcross(first, last) + 1;

export const holdsNeedle = ([first, last]: NeedleRange, needle: number): boolean =>
  position(first) <= position(needle) && position(needle) <= position(last);

/** "L22 to R22", or "L5" where there is only one. */
export const rangeName = ([first, last]: NeedleRange): string =>
  first === last ? needleName(first) : `${needleName(first)} to ${needleName(last)}`;

/** How many needles a bed has on each side of its centre; an odd one has the extra needle at the right. */
export const bedSides = (needles: number): { left: number; right: number } => ({
  left: Math.floor(needles / 2),
  right: Math.ceil(needles / 2),
});
