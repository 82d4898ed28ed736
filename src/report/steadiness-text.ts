import { type Bounds, gaugeRange } from "../cloth/gauge-range.ts";
import { gaugeOff } from "../cloth/gauge-uncertainty.ts";
import type { Fit } from "../fit/fit.ts";
import type { Fits } from "../fit/solve.ts";
import type { Gauge } from "../garment/garment.ts";
import { rangesOf } from "../steady/ranges.ts";
import {
  countsOf,
  type LargerSwatch,
  type Narrower,
  type Steadiness,
  type SwatchCounts,
} from "../steady/steadiness.ts";
import { fitFields } from "./fit-json.ts";
import { fitText } from "./fit-text.ts";
import { roundUpTo } from "./rounding.ts";
import { offWords } from "./steady-words.ts";
import { counted, listed } from "./words.ts";
import { wrap } from "./wrap.ts";

/**
 * A text about the best fit, or about why nothing fits, with what there is to know of a garment that has to be steady
 * below: how wide a range can be had and what fits over it, where nothing fits over what is asked, and what a larger
 * swatch would gain.
 *
 * @param fitted the fit as asked, where there is one
 */
export function withSteadiness(
  text: string,
  steadiness: Steadiness | undefined,
  fitted: Fits | undefined,
  width: number,
): string {
  if (!steadiness) return text;
  const offered = steadiness.narrower?.offered;
  return [
    text,
    ...(fitted ? [wrap(holdsWords(steadiness, fitted), width).join("\n")] : []),
    steadinessText(steadiness, fitted, width),
    ...(offered ? [fitText(offered.result, width)] : []),
  ]
    .filter((part) => part !== "")
    .join("\n\n");
}

function steadinessText(steadiness: Steadiness, fitted: Fits | undefined, width: number): string {
  const { narrower, larger } = steadiness;
  return [
    ...(fitted ? [] : narrower ? narrowerWords(steadiness, narrower) : [neverWords(steadiness)]),
    ...(larger ? largerWords(steadiness, larger, fitted) : []),
  ]
    .flatMap((words) => wrap(words, width, words.startsWith(" ") ? 4 : 0))
    .join("\n");
}

/** That the fit is what was asked for, and whether asking changed it. */
function holdsWords({ asked, asTold }: Steadiness, { fit }: Fits): string {
  const over = asked === 1 ? "the whole range" : `the ${percent(asked)} of the range that are asked for`;
  const same = asTold && isSame(fit, asTold) ? "; it is the same fit as without asking for that" : "";
  return `This holds over ${over}${same}.`;
}

const isSame = (fit: Fit, other: Fit): boolean =>
  JSON.stringify(fitFields(fit)) === JSON.stringify(fitFields(other));

const noTime = "There was no time to find out over how much of the range something fits.";

const neverWords = ({ fitsAsTold }: Steadiness): string =>
  fitsAsTold === false ? "It is not the gauge alone: nothing fits even for the gauge as it is told." : noTime;

function narrowerWords(
  { garment: { gauge }, asked }: Steadiness,
  { share, noneFrom, exact, offered, swatchTimes }: Narrower,
): readonly string[] {
  if (share === undefined || !offered)
    return [
      share === undefined && exact
        ? "How wide a range can be had: none. Something fits for the gauge as it is told, but once a row is more than half a row off, a piece is longer or shorter than it may be."
        : noTime,
    ];
  const over = asked === 1 ? "the whole range" : `the ${percent(asked)} of the range that are asked for`;
  const off = `at most ${offWords(gaugeOff(gauge), offered.share)} off`;
  const found = `Over ${over} nothing fits. Below is the best fit over ${percent(offered.share)} of ${asked === 1 ? "it" : "the range"} (${off}); write steady: ${percent(offered.share)} to ask for it.`;
  return [
    exact
      ? `${found} From ${percent(roundUpTo(noneFrom, 3))} on nothing fits.`
      : `${found} Something may fit over more, but over less than ${percent(roundUpTo(noneFrom, 3))}: the time was up.`,
    ...(swatchTimes === undefined
      ? []
      : [
          `For ${asked === 1 ? "all of it" : `the ${percent(asked)} that are asked for`} the swatch would have to be ${roundUpTo(swatchTimes, 2)} times as large${countWords(countsOf(gauge, swatchTimes))}.`,
        ]),
  ];
}

function largerWords(
  { garment, asked, asTold }: Steadiness,
  { times, counts, result }: LargerSwatch,
  fitted: Fits | undefined,
): readonly string[] {
  const head = `A swatch ${times === 2 ? "twice" : `${times} times`} as large${countWords(counts)}:`;
  const { gauge } = garment;
  const cost = (fits: Fits): string => fits.fit.cost.toFixed(3);
  const gain = !result
    ? ["  nothing would fit even then"]
    : !fitted
      ? [`  something would fit, at a cost of ${cost(result)}`]
      : [
          result.fit.cost < fitted.fit.cost - 1e-6
            ? `  the best fit would cost ${cost(result)} instead of ${cost(fitted)}`
            : `  the best fit would cost ${cost(fitted)}, as it does now`,
          ...(asTold ? [`  with a gauge known for certain it would cost ${asTold.cost.toFixed(3)}`] : []),
        ];
  const shown = fitted ?? result;
  return [head, ...(shown ? sizeWords(shown, gauge, times) : []), ...gain].filter(() => asked > 0);
}

/** How far each piece's measurements may be off, now and with the larger swatch. */
const sizeWords = ({ fit }: Fits, gauge: Gauge, times: number): readonly string[] => {
  const now = rangesOf(fit, gaugeRange(gauge));
  const then = rangesOf(fit, gaugeRange(gauge, 1 / times));
  return now.pieces.map((piece, index) => {
    const larger = then.pieces[index]!;
    return `  ${piece.name} would be known within ${eitherWay(larger.lengthMm)} instead of ${eitherWay(piece.lengthMm)} mm in length, ${eitherWay(larger.widestMm)} instead of ${eitherWay(piece.widestMm)} mm in width`;
  });
};

/** Half of a range in mm, rounded up to a tenth. */
const eitherWay = ({ least, most }: Bounds): string => roundUpTo((most - least) / 2, 1).toFixed(1);

function countWords({ stitches, rows, cordStitches }: SwatchCounts): string {
  const words = [
    ...(stitches === undefined ? [] : [counted(stitches, "stitch", "stitches")]),
    ...(rows === undefined ? [] : [counted(rows, "row")]),
    ...(cordStitches === undefined ? [] : [counted(cordStitches, "cord stitch", "cord stitches")]),
  ];
  return words.length === 0 ? "" : ` (${listed(words)})`;
}

const percent = (share: number): string => `${Number((100 * share).toFixed(1))} %`;
