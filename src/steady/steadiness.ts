import type { Engine } from "../../solver/program.ts";
import { readTo, rowsCounted } from "../cloth/gauge-uncertainty.ts";
import type { Fit } from "../fit/fit.ts";
import { type FitResult, type Fits, fitGarment } from "../fit/solve.ts";
import type { Garment, Gauge } from "../garment/garment.ts";
import { steadyOver, type Widest, widestSteady } from "./widest.ts";

/** What there is to know beside a fit that has to be steady, or where there is none. */
export interface Steadiness {
  /** The garment that has to be steady, over the share `asked`. */
  readonly garment: Garment;
  readonly asked: number;
  /** How wide a range can be had, where nothing fits over what is asked. */
  readonly narrower?: Narrower;
  /** Whether something fits for the gauge as it is told; absent where there was no time to find out. */
  readonly fitsAsTold?: boolean;
  /** The best fit then, which may go beyond its limits elsewhere in the range. */
  readonly asTold?: Fit;
  readonly larger?: LargerSwatch;
}

export interface Narrower extends Widest {
  /** The best fit over a share that can be written into the file: whole tenths of a percent below the widest. */
  readonly offered?: { readonly share: number; readonly result: Fits };
  /** How many times as large a swatch has to be for something to fit over all that is asked. */
  readonly swatchTimes?: number;
}

/** What the same counts over a longer stretch would gain: a count misread by as much then weighs so much less. */
export interface LargerSwatch {
  readonly times: number;
  readonly counts: SwatchCounts;
  /** The best steady fit then; absent where nothing would fit even so. */
  readonly result?: Fits;
}

/**
 * What would have to be counted; each absent where the file says that a count is surer than it could have been read, so
 * that it is not what was counted.
 */
export interface SwatchCounts {
  readonly stitches?: number;
  readonly rows?: number;
  readonly cordStitches?: number;
}

/** A swatch twice as large is what a knitter would think of first. */
const usualTimes = 2;

/**
 * Looks round a garment that has to be steady: how wide a range can be had where nothing fits, and what a larger swatch
 * would gain.
 *
 * @param result of fitting it as it asks
 * @param leftMs time that is left, in ms
 */
export async function steadinessOf(
  garment: Garment,
  result: FitResult,
  engine: Engine,
  rivals: number | undefined,
  leftMs: () => number,
): Promise<Steadiness | undefined> {
  const { steady: asked, ...asTold } = garment;
  if (asked === undefined || result.status === "stopped") return undefined;
  const options = () => ({ rivals: 0, timeLimitMs: Math.max(1, leftMs()) });
  const told = leftMs() > 0 ? await fitGarment(asTold, engine, options()) : undefined;
  const narrower =
    result.status === "does not fit" && told?.status === "fits"
      ? await narrowerThan(garment, asked, engine, rivals, leftMs)
      : undefined;
  const twice =
    told?.status === "fits" && leftMs() > 0
      ? await steadyOver(garment, engine, asked / usualTimes, options())
      : undefined;
  return {
    garment,
    asked,
    ...(narrower && { narrower }),
    ...(told && told.status !== "stopped" && { fitsAsTold: told.status === "fits" }),
    ...(told?.status === "fits" && { asTold: told.fit }),
    ...(twice &&
      twice.status !== "stopped" && {
        larger: {
          times: usualTimes,
          counts: countsOf(garment.gauge, usualTimes),
          ...(twice.status === "fits" && { result: twice }),
        },
      }),
  };
}

async function narrowerThan(
  garment: Garment,
  asked: number,
  engine: Engine,
  rivals: number | undefined,
  leftMs: () => number,
): Promise<Narrower> {
  const widest = await widestSteady(garment, engine, asked, leftMs);
  if (widest.share === undefined) return widest;
  const share = Math.floor(1000 * widest.share) / 1000;
  const result = await steadyOver(garment, engine, share, {
    ...(rivals !== undefined && { rivals }),
    timeLimitMs: Math.max(1, leftMs()),
  });
  return {
    ...widest,
    ...(result.status === "fits" && { offered: { share, result } }),
    ...(widest.share > 0 && { swatchTimes: asked / widest.share }),
  };
}

/** What has to be counted for a swatch that many times as large, rounded up to whole stitches and rows. */
export function countsOf({ ground, cord }: Gauge, times: number): SwatchCounts {
  const enough = (count: number): number => Math.ceil(count * times - 1e-6);
  const rows = rowsCounted(ground);
  return {
    ...(wasCounted(ground.stitches, ground.within?.stitches) && { stitches: enough(ground.stitches) }),
    ...(wasCounted(rows, ground.within?.rows) && { rows: enough(rows) }),
    ...(cord && wasCounted(cord.stitches, cord.within) && { cordStitches: enough(cord.stitches) }),
  };
}

/** Counts told for a length such as 10 cm are often surer than so few could have been read: more of them were counted. */
const wasCounted = (count: number, within: number | undefined): boolean =>
  within === undefined || within >= (readTo / count) * (1 - 1e-9);
