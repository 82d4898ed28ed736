import { groundStitch } from "../cloth/gauge.ts";
import { prepareCord } from "../cord/preparation.ts";
import type { Fit } from "../fit/fit.ts";
import type { Yarn } from "../garment/garment.ts";
import { cordStitchMetres } from "./cord-stitch.ts";
import { gramsOf, metresOf } from "./count.ts";
import { loopMetres } from "./loop-length.ts";
import { type Range, times } from "./range.ts";
import { stitchesIn } from "./stitches.ts";
import { gramsByWeight } from "./weighed.ts";

/** Yarn that a garment takes. */
export interface YarnEstimate {
  readonly ground: YarnNeed;
  /** Missing where no cord is laid. */
  readonly cord?: YarnNeed;
}

export interface YarnNeed {
  /** From the gauge, by the loop-length constants. */
  readonly byGauge: YarnAmount<Range>;
  /** From the weight of a swatch, where the file gives it. */
  readonly byWeight?: YarnAmount<Range>;
  /** Which of the two leaves less room; usually the weight, unless the swatch weighs next to nothing. */
  readonly surer: "gauge" | "weight";
  /** What is in neither: waste for the ground, tails for the cord. */
  readonly extra: YarnAmount<number>;
  /** What to have at hand: the most that the surer way says, and the extra. */
  readonly atHand: YarnAmount<number>;
}

/** Metres, grams or both: the one follows from the other where the yarn's tex is known. */
export interface YarnAmount<Value> {
  readonly metres?: Value;
  readonly grams?: Value;
}

/** Casting on, tails, seams and waste, as a fraction of the ground's yarn: 5 to 10 % from memory; the greater. */
const groundWaste = 0.1;

/** The yarn of a fit, with the bounds that the constants, the swatch and the scale leave. */
export function estimateYarn(fit: Fit): YarnEstimate {
  const { gauge, yarn } = fit.garment;
  const loop = loopMetres(gauge.ground);
  const stitches = fit.pieces.reduce((sum, piece) => sum + stitchesIn(piece), 0);
  const ground = needOf(yarn.ground, stitches, loop, ({ metres, grams }) => ({
    ...(metres && { metres: metres.about * groundWaste }),
    ...(grams && { grams: grams.about * groundWaste }),
  }));
  const cords = fit.placements
    .map((placement) => prepareCord(fit, placement))
    .filter((one) => one !== undefined);
  const [anyCord] = cords;
  if (!anyCord) return { ground };
  const cordStitches = cords.reduce((sum, { make }) => sum + make, 0);
  const cordStitch = cordStitchMetres(anyCord.needles, loop, groundStitch(gauge).widthMm / 1000);
  const tails = cords.reduce((sum, { tails: { count, eachMm } }) => sum + (count * eachMm) / 1000, 0);
  return {
    ground,
    cord: needOf(yarn.cord, cordStitches, cordStitch, () => ({
      metres: tails,
      ...(yarn.cord?.tex !== undefined && { grams: gramsOf(tails, yarn.cord.tex) }),
    })),
  };
}

/**
 * @param stitches stitches of the ground, or cord stitches
 * @param metresEach yarn in one of them by the gauge
 * @param extraTo what to add to the amount that the surer way says
 */
function needOf(
  yarn: Yarn | undefined,
  stitches: number,
  metresEach: Range,
  extraTo: (needed: YarnAmount<Range>) => YarnAmount<number>,
): YarnNeed {
  const tex = yarn?.tex;
  const byGauge = fromMetres(times(metresEach, stitches), tex);
  const byWeight = yarn?.swatch && fromGrams(gramsByWeight(yarn.swatch, stitches), tex);
  const surer = byWeight && roomIn(byWeight) < roomIn(byGauge) ? "weight" : "gauge";
  const needed = byWeight && surer === "weight" ? byWeight : byGauge;
  const extra = extraTo(needed);
  return {
    byGauge,
    ...(byWeight && { byWeight }),
    surer,
    extra,
    atHand: {
      ...(needed.metres && { metres: needed.metres.most + (extra.metres ?? 0) }),
      ...(needed.grams && { grams: needed.grams.most + (extra.grams ?? 0) }),
    },
  };
}

/** How far apart the bounds are, as a fraction of the middle. */
function roomIn({ metres, grams }: YarnAmount<Range>): number {
  const { least, about, most } = (metres ?? grams)!;
  return (most - least) / about;
}

const fromMetres = (metres: Range, tex: number | undefined): YarnAmount<Range> => ({
  metres,
  ...(tex !== undefined && { grams: times(metres, gramsOf(1, tex)) }),
});

const fromGrams = (grams: Range, tex: number | undefined): YarnAmount<Range> => ({
  grams,
  ...(tex !== undefined && { metres: times(grams, metresOf(1, tex)) }),
});
