import { type Pooled, pooled } from "./pool.ts";
import type { CordSample, Counted, GroundSwatch, Swatch } from "./swatch.ts";

/** What swatches say of ground and cord. */
export interface SwatchGauge {
  readonly ground?: GroundReading;
  readonly cord?: CordReading;
}

export interface GroundReading {
  readonly stitches: Pooled;
  readonly rows: Pooled;
  readonly washed: boolean;
  /** What washing did to width and height, as fractions (-0.02 = 2 % less); where it was measured before and after. */
  readonly change?: { readonly width: number; readonly height: number };
}

export interface CordReading {
  readonly stitches: Pooled;
  readonly washed: boolean;
  readonly needles?: number;
  readonly change?: { readonly length: number };
}

/**
 * The gauge of ground and cord, each from its own swatches. Where some of them are washed, those alone count, because
 * a garment is worn washed; the others say what washing changes.
 */
export function swatchGauge(swatches: readonly Swatch[]): SwatchGauge {
  const ground = groundReading(swatches.filter((one): one is GroundSwatch => one.of === "ground"));
  const cord = cordReading(swatches.filter((one): one is CordSample => one.of === "cord"));
  return { ...(ground && { ground }), ...(cord && { cord }) };
}

function groundReading(swatches: readonly GroundSwatch[]): GroundReading | undefined {
  const stitches = beforeAndAfter(swatches, (one) => one.stitches);
  const rows = beforeAndAfter(swatches, ({ rows: counted }) => counted);
  if (!stitches || !rows) return undefined;
  return {
    stitches: stitches.counts,
    rows: rows.counts,
    washed: stitches.washed,
    ...(stitches.change !== undefined &&
      rows.change !== undefined && { change: { width: stitches.change, height: rows.change } }),
  };
}

function cordReading(samples: readonly CordSample[]): CordReading | undefined {
  const stitches = beforeAndAfter(samples, (one) => one.stitches);
  if (!stitches) return undefined;
  const needles = samples.find((one) => one.needles !== undefined)?.needles;
  return {
    stitches: stitches.counts,
    washed: stitches.washed,
    ...(needles !== undefined && { needles }),
    ...(stitches.change !== undefined && { change: { length: stitches.change } }),
  };
}

interface BeforeAndAfter {
  readonly counts: Pooled;
  readonly washed: boolean;
  readonly change?: number;
}

function beforeAndAfter<One extends Swatch>(
  swatches: readonly One[],
  countedOf: (swatch: One) => Counted,
): BeforeAndAfter | undefined {
  const before = poolOf(swatches.filter(({ washed }) => !washed).map(countedOf));
  const after = poolOf(swatches.filter(({ washed }) => washed).map(countedOf));
  if (after)
    return {
      counts: after,
      washed: true,
      ...(before && { change: before.perMm / after.perMm - 1 }),
    };
  return before && { counts: before, washed: false };
}

function poolOf([first, ...others]: readonly Counted[]): Pooled | undefined {
  return first && pooled([first, ...others]);
}

/** Needles that two samples of cord disagree about, where they do. */
export function cordNeedlesApart(swatches: readonly Swatch[]): readonly number[] {
  const said = new Set(
    swatches.flatMap((one) => (one.of === "cord" && one.needles !== undefined ? [one.needles] : [])),
  );
  return said.size > 1 ? [...said] : [];
}
