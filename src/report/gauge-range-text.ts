import { type Bounds, gaugeRange } from "../cloth/gauge-range.ts";
import { gaugeOff } from "../cloth/gauge-uncertainty.ts";
import type { Fit } from "../fit/fit.ts";
import { type MotifRange, type PieceRange, rangesOf } from "../steady/ranges.ts";
import { type Broken, brokenAt, shareGrain, slackOf } from "../steady/slack.ts";
import { roundTo } from "./rounding.ts";
import { offWords } from "./steady-words.ts";
import { listed, signedPercent } from "./words.ts";
import { wrap } from "./wrap.ts";

/** What a fit may come to over all that the swatch leaves open, a piece and a motif a line, and whether it holds. */
export function gaugeRangeLines(fit: Fit, width: number): readonly string[] {
  const { gauge } = fit.garment;
  const { pieces, motifs } = rangesOf(fit, gaugeRange(gauge));
  return [
    ...wrap(`If the gauge is off by ${offWords(gaugeOff(gauge))}`, width),
    ...[...pieces.map(pieceWords), ...motifs.flatMap(motifWords), slackWords(fit)].flatMap((words) =>
      wrap(`  ${words}`, width, 4),
    ),
  ];
}

const pieceWords = ({ name, lengthMm, castOnMm, widestMm }: PieceRange): string => {
  const widest = widestMm.most === castOnMm.most ? "" : `, ${centimetres(widestMm)} at its widest`;
  return `${name}: ${centimetres(lengthMm)} long, ${centimetres(castOnMm)} wide at the cast-on edge${widest}`;
};

/** More stretches than these are told together: a motif that grows has some of its own in every section. */
const mostApart = 4;

function motifWords({ name, segments }: MotifRange): readonly string[] {
  if (segments.length === 0) return [];
  if (segments.length > mostApart)
    return [`${name}: ease of all its stretches ${percents(around(segments))}`];
  const each = segments.map(({ segment, ease }) => `${segment.name} ${percents(ease)}`);
  return [`${name}: ease of ${listed(each)}`];
}

const around = (segments: MotifRange["segments"]): Bounds => ({
  least: Math.min(...segments.map(({ ease }) => ease.least)),
  most: Math.max(...segments.map(({ ease }) => ease.most)),
});

const percents = ({ least, most }: Bounds): string => `${signedPercent(least)} to ${signedPercent(most)}`;

/** Rounded down, so that no more is promised than holds. */
function slackWords(fit: Fit): string {
  const slack = slackOf(fit);
  if (slack >= 1) {
    const times = Math.floor(10 * slack) / 10;
    return `every limit is kept, ${times === 1 ? "and only just" : `even ${times} times as far off`}`;
  }
  const broken = brokenAt(fit, slack + 2 * shareGrain);
  const share = Math.floor(1000 * slack) / 10;
  const held =
    share === 0
      ? "no part of the range is safe: a limit is reached at the gauge itself"
      : `every limit is kept over ${share} % of that`;
  const beyond = broken ? `; further off ${brokenWords[broken.what](broken.of)}` : "";
  return `${held}${beyond}${fit.garment.steady === undefined ? " (steady: true asks for all of it)" : ""}`;
}

const brokenWords: Readonly<Record<Broken["what"], (of: string) => string>> = {
  length: (piece) => `${piece} comes out longer or shorter than it may`,
  ease: (motif) => `the ease of ${motif} goes beyond its limits`,
  loop: (motif) => `a loop of ${motif} gets longer than its wearer may have`,
};

/** "35.8 to 36.4 cm": outward to a millimetre, so that nothing lies beyond. */
export const centimetres = ({ least, most }: Bounds): string =>
  `${roundTo(Math.floor(least + 1e-6) / 10, 1)} to ${roundTo(Math.ceil(most - 1e-6) / 10, 1)} cm`;
