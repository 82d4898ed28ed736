import type { CordGauge, Gauge, GroundGauge } from "../garment/garment.ts";

/** How far off a ground gauge may be, as fractions (0.02 = 2 %). */
export interface GaugeUncertainty {
  readonly stitches: number;
  readonly rows: number;
}

/** What can be told apart when stitches or rows of a swatch are counted: common practice, no published source. */
export const readTo = 0.25;

/** What the file says, else a quarter stitch in the swatch's stitches and a quarter row in its rows. */
export const gaugeUncertainty = (ground: GroundGauge): GaugeUncertainty => ({
  stitches: ground.within?.stitches ?? readTo / ground.stitches,
  rows: ground.within?.rows ?? readTo / rowsCounted(ground),
});

/** Rows as they were counted on the swatch. */
export const rowsCounted = ({ rows, rowsCounted: apart }: GroundGauge): number => apart?.rows ?? rows;

/** How far off a cord's gauge may be, as a fraction: what the file says, else a quarter of a cord stitch in its count. */
export const cordUncertainty = ({ stitches, within }: CordGauge): number => within ?? readTo / stitches;

/** How far off each count of a gauge may be, as fractions; no cord where none is measured. */
export interface GaugeOff extends GaugeUncertainty {
  readonly cord?: number;
}

export const gaugeOff = ({ ground, cord }: Gauge): GaugeOff => ({
  ...gaugeUncertainty(ground),
  ...(cord && { cord: cordUncertainty(cord) }),
});
