import type { Gauge } from "../garment/garment.ts";
import { cordUncertainty, gaugeUncertainty } from "./gauge-uncertainty.ts";

/** The least and the most that something may be, both of them possible. */
export interface Bounds {
  readonly least: number;
  readonly most: number;
}

/**
 * Every gauge that a swatch leaves possible, in mm: stitches, rows and cord stitches are counted by themselves, so each
 * may be anything between its bounds whatever the others are.
 */
export interface GaugeRange {
  readonly stitchWidthMm: Bounds;
  readonly rowHeightMm: Bounds;
  readonly cordStitchMm?: Bounds;
}

/**
 * The range of a gauge. What is misread is the count, so a stitch is between `over / (count * (1 + off))` and
 * `over / (count * (1 - off))`.
 *
 * @param share of what the counts leave open that is taken in: 1 is all of it, 0 the gauge as it is told
 */
export function gaugeRange({ ground, cord }: Gauge, share = 1): GaugeRange {
  const off = gaugeUncertainty(ground);
  return {
    stitchWidthMm: oneOf(ground.overMm, ground.stitches, share * off.stitches),
    rowHeightMm: oneOf(ground.overMm, ground.rows, share * off.rows),
    ...(cord && { cordStitchMm: oneOf(cord.overMm, cord.stitches, share * cordUncertainty(cord)) }),
  };
}

const oneOf = (overMm: number, count: number, off: number): Bounds => ({
  least: overMm / (count * (1 + off)),
  most: overMm / (count * (1 - off)),
});
