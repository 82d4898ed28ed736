import { gaugeRange } from "../cloth/gauge-range.ts";
import { gaugeOff } from "../cloth/gauge-uncertainty.ts";
import { rangesOf } from "../steady/ranges.ts";
import { countsOf, type Steadiness, type SwatchCounts } from "../steady/steadiness.ts";
import { fitFields } from "./fit-json.ts";
import { down, offToJson, pieceRangeToJson } from "./gauge-range-json.ts";
import { roundTo } from "./rounding.ts";

/** What there is to know beside a fit that has to be steady, or where there is none. */
export function steadinessToJson(steadiness: Steadiness): object {
  const { garment, asked, narrower, fitsAsTold, asTold, larger } = steadiness;
  const { gauge } = garment;
  return {
    asked,
    ...(fitsAsTold !== undefined && { fits_as_told: fitsAsTold }),
    ...(asTold && { cost_as_told: roundTo(asTold.cost, 6) }),
    ...(narrower && {
      widest: {
        share: narrower.share === undefined ? null : down(narrower.share),
        exact: narrower.exact,
        none_from: Math.ceil(narrower.noneFrom * 1e6) / 1e6,
        ...(narrower.share !== undefined && { off_by: offToJson(gaugeOff(gauge), narrower.share) }),
        ...(narrower.offered && {
          offered: {
            share: narrower.offered.share,
            cost: roundTo(narrower.offered.result.fit.cost, 6),
            ...fitFields(narrower.offered.result.fit),
          },
        }),
        ...(narrower.swatchTimes !== undefined && {
          swatch_needed: {
            times: roundTo(narrower.swatchTimes, 6),
            ...countsToJson(countsOf(gauge, narrower.swatchTimes)),
          },
        }),
      },
    }),
    ...(larger && {
      larger_swatch: {
        times: larger.times,
        ...countsToJson(larger.counts),
        fits: larger.result !== undefined,
        ...(larger.result && {
          cost: roundTo(larger.result.fit.cost, 6),
          pieces: rangesOf(larger.result.fit, gaugeRange(gauge, 1 / larger.times)).pieces.map(
            pieceRangeToJson,
          ),
        }),
      },
    }),
  };
}

const countsToJson = ({ stitches, rows, cordStitches }: SwatchCounts): object => ({
  ...(stitches !== undefined && { stitches }),
  ...(rows !== undefined && { rows }),
  ...(cordStitches !== undefined && { cord_stitches: cordStitches }),
});
