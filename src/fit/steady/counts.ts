import { type GaugeRange, gaugeRange } from "../../cloth/gauge-range.ts";
import type { Garment } from "../../garment/garment.ts";
import { easeBounds } from "../../motif/ease-range.ts";
import { keepsEase } from "../../motif/keeps-ease.ts";
import type { EaseLimits } from "../../motif/motif.ts";
import type { Segment } from "../../motif/segments.ts";
import { mostLoopMm } from "../../safety/cord-rules.ts";
import { keepsLoop, loopMm } from "../loop.ts";

/** What the counts of a motif have to keep, beside the limits of its ease at the gauge as it is told. */
export interface CountLimits {
  /** Most that cord and cloth between two hangings may be round; no limit where it is not given. */
  readonly mostLoopMm?: number;
  /** Every gauge for which they have to keep their limits; only the one as told where it is not given. */
  readonly over?: GaugeRange;
}

/** What a garment asks of the counts of one of its motifs. */
export function countLimits(garment: Garment, motif: string): CountLimits {
  const most = mostLoopMm(garment, motif);
  return {
    ...(most !== undefined && { mostLoopMm: most }),
    ...(garment.steady !== undefined && { over: gaugeRange(garment.gauge, garment.steady) }),
  };
}

type Count = Segment & { readonly pickup: number };

/** Whether a count keeps the limits of ease and of loops for every gauge of a range. */
export const keepsOver = (
  count: Count,
  ease: EaseLimits,
  range: GaugeRange,
  { mostLoopMm: most }: CountLimits,
  thicknessMm: number | undefined,
): boolean => keepsLoopOver(count, range, most) && keepsEaseOver(count, ease, range, thicknessMm);

/** A loop is longest where everything is: its cord, and both ways of the straight line behind it. */
export const keepsLoopOver = (count: Count, range: GaugeRange, most: number | undefined): boolean =>
  keepsLoop(
    loopMm(
      count,
      { widthMm: range.stitchWidthMm.most, heightMm: range.rowHeightMm.most },
      range.cordStitchMm!.most,
    ),
    most,
  );

/** How long a standing loop is is the knitter's own choice, and no ease. */
const keepsEaseOver = (
  count: Count,
  ease: EaseLimits,
  range: GaugeRange,
  thicknessMm: number | undefined,
): boolean => count.fixed !== undefined || keepsEase(easeBounds(count, range, thicknessMm), ease);
