import { readTo } from "../cloth/gauge-uncertainty.ts";
import type { Counted } from "./swatch.ts";

/** A tape laid on cloth is read to half a millimetre: common practice, no published source. */
const tapeReadToMm = 0.5;

/** What several swatches say together. */
export interface Pooled {
  /** All counts over all lengths, and their quotient. */
  readonly counted: Counted;
  readonly perMm: number;
  /** How far that may be off, as a fraction (0.01 = 1 %): the larger of `reading` and `spread`. */
  readonly within: number;
  /** From what can be told apart in a count and on a tape. */
  readonly reading: number;
  /** How far the gauge furthest from the pooled one stands from it; 0 for one swatch. */
  readonly spread: number;
  readonly swatches: number;
  /** Of the swatch in which most was counted. */
  readonly most: Counted;
}

/**
 * The gauge of several swatches: the sum of the counts over the sum of the lengths, as if they were one long swatch.
 * A line through nothing by least squares would weigh a swatch by the square of its length; here it weighs by its
 * length, because each stitch that was counted tells as much as any other.
 *
 * Counts and tape are misread by themselves, so what comes of them adds up as the root of the sum of squares: for k
 * swatches `hypot(sqrt(k) * 1/4 / counts, sqrt(k) * 0.5 mm / lengths)`. Where the swatches stand further apart than
 * that, the range is made wide enough to take in each of them.
 *
 * @param swatches at least one
 */
export function pooled(swatches: readonly [Counted, ...Counted[]]): Pooled {
  const counts = swatches.reduce((sum, { count }) => sum + count, 0);
  const mm = swatches.reduce((sum, one) => sum + one.mm, 0);
  const perMm = counts / mm;
  const reading = Math.sqrt(swatches.length) * misreading({ count: counts, mm });
  const spread = swatches.length === 1 ? 0 : Math.max(...swatches.map((one) => apart(one, perMm)));
  return {
    counted: { count: counts, mm },
    perMm,
    within: Math.max(reading, spread),
    reading,
    spread,
    swatches: swatches.length,
    most: swatches.reduce((most, one) => (one.count > most.count ? one : most)),
  };
}

/** How far one swatch's gauge may be off by what is misread in it, as a fraction. */
export const misreading = ({ count, mm }: Counted): number => Math.hypot(readTo / count, tapeReadToMm / mm);

/** What is lost in dividing and adding is no difference between swatches. */
const sameGauge = 1e-12;

function apart({ count, mm }: Counted, perMm: number): number {
  const difference = Math.abs(count / mm / perMm - 1);
  return difference < sameGauge ? 0 : difference;
}

/**
 * How many stitches (or rows) have to be counted at this gauge, in tens, for it to be known within `within`.
 */
export const countFor = (perMm: number, within: number): number =>
  Math.ceil(misreading({ count: 1, mm: 1 / perMm }) / within / 10) * 10;
