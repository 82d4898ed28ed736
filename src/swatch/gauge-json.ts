import { roundTo } from "../report/rounding.ts";
import { adviceOn } from "./advice.ts";
import type { Pooled } from "./pool.ts";
import type { SwatchGauge } from "./swatch-gauge.ts";

/** The machine-readable gauge, `evenrow-gauge/1`: counts over 10 cm; `within` and changes as fractions. */
export function gaugeToJson(gauge: SwatchGauge): object {
  const { ground, cord } = gauge;
  return {
    format: "evenrow-gauge/1",
    over_mm: 100,
    ...(ground && {
      ground: {
        stitches: pooledJson(ground.stitches),
        rows: pooledJson(ground.rows),
        swatches: ground.stitches.swatches,
        washed: ground.washed,
        ...(ground.change && {
          washing: { width: roundTo(ground.change.width, 5), height: roundTo(ground.change.height, 5) },
        }),
      },
    }),
    ...(cord && {
      cord: {
        ...(cord.needles !== undefined && { needles: cord.needles }),
        stitches: pooledJson(cord.stitches),
        swatches: cord.stitches.swatches,
        washed: cord.washed,
        ...(cord.change && { washing: { length: roundTo(cord.change.length, 5) } }),
      },
    }),
    advice: adviceOn(gauge),
  };
}

const pooledJson = ({ perMm, within, reading, spread }: Pooled): object => ({
  count: roundTo(perMm * 100, 4),
  within: roundTo(within, 5),
  reading: roundTo(reading, 5),
  spread: roundTo(spread, 5),
});
