import { gaugeUncertainty } from "../cloth/gauge-uncertainty.ts";
import type { GroundGauge } from "../garment/garment.ts";
import { loopLengthCm, restedKs } from "./fabric-geometry.ts";
import type { Range } from "./range.ts";

/**
 * Yarn in one stitch of the ground, in metres, from the gauge: `l = sqrt(Ks / S)`. Its bounds are where the constant
 * and both counts of the swatch err the same way.
 */
export function loopMetres(gauge: GroundGauge): Range {
  const off = gaugeUncertainty(gauge);
  const cm2 = (gauge.overMm / 10) ** 2;
  const metres = (ks: number, sign: -1 | 0 | 1): number => {
    const across = gauge.stitches * (1 + sign * off.stitches);
    const up = gauge.rows * (1 + sign * off.rows);
    return loopLengthCm((across * up) / cm2, ks) / 100;
  };
  return {
    least: metres(restedKs.least, 1),
    about: metres(restedKs.about, 0),
    most: metres(restedKs.most, -1),
  };
}
