import { type Bounds, gaugeRange } from "../cloth/gauge-range.ts";
import { type GaugeOff, gaugeOff } from "../cloth/gauge-uncertainty.ts";
import type { Fit } from "../fit/fit.ts";
import { type PieceRange, rangesOf, type SegmentRange } from "../steady/ranges.ts";
import { slackOf } from "../steady/slack.ts";
import { roundTo } from "./rounding.ts";

/**
 * What a fit comes to over all that the swatch leaves open. Lengths in mm to a hundredth, eases and parts to six
 * decimals; `holds_over` is the share of the range over which the limits are kept, above 1 where more would do.
 */
export function gaugeRangeToJson(fit: Fit): object {
  const { gauge } = fit.garment;
  const { pieces, motifs } = rangesOf(fit, gaugeRange(gauge));
  return {
    off_by: offToJson(gaugeOff(gauge)),
    holds_over: down(slackOf(fit)),
    pieces: pieces.map(pieceRangeToJson),
    motifs: Object.fromEntries(motifs.map(({ name, segments }) => [name, segments.map(segmentToJson)])),
  };
}

export const offToJson = ({ stitches, rows, cord }: GaugeOff, share = 1): object => ({
  stitches: roundTo(share * stitches, 6),
  rows: roundTo(share * rows, 6),
  ...(cord !== undefined && { cord: roundTo(share * cord, 6) }),
});

export const pieceRangeToJson = ({ name, lengthMm, castOnMm, widestMm }: PieceRange): object => ({
  piece: name,
  length_mm: boundsToJson(lengthMm, 2),
  cast_on_mm: boundsToJson(castOnMm, 2),
  widest_mm: boundsToJson(widestMm, 2),
});

const segmentToJson = ({ segment: { name, needles, rows, pickup }, ease }: SegmentRange): object => ({
  name,
  needles,
  rows,
  pickup,
  ease: boundsToJson(ease, 6),
});

const boundsToJson = ({ least, most }: Bounds, decimals: number): readonly number[] => [
  roundTo(least, decimals),
  roundTo(most, decimals),
];

/** Rounded so that it is never more than holds. */
export const down = (share: number): number => Math.floor(share * 1e6) / 1e6;
