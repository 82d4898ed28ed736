import { type CordPreparation, prepareCord } from "../cord/preparation.ts";
import type { Fit } from "../fit/fit.ts";
import { timesMade } from "../garment/times-made.ts";
import { type Range, times } from "./range.ts";
import { groundWaste, plainYarn, type Reckoning, reckon, surely, type YarnAmount } from "./reckoning.ts";
import { stitchesIn } from "./stitches.ts";

/** Yarn that a garment takes, every piece as often as it is made. */
export interface YarnEstimate {
  readonly ground: YarnNeed;
  /** Missing where no cord is laid. */
  readonly cord?: YarnNeed;
}

export interface YarnNeed extends Reckoning {
  /** What is in neither: waste for the ground, tails for the cord. */
  readonly extra: YarnAmount<number>;
  /** What to have at hand: the most that the surer way says, and the extra. */
  readonly atHand: YarnAmount<number>;
}

/** The yarn of a fit, with the bounds that the constants, the swatch and the scale leave. */
export function estimateYarn(fit: Fit): YarnEstimate {
  const { gauge, yarn } = fit.garment;
  const stitches = fit.pieces.reduce(
    (sum, piece) => sum + timesMade(fit.garment, piece.name) * stitchesIn(piece),
    0,
  );
  const ground = needOf(reckon(gauge, yarn, "ground"), stitches, (needed) => ({
    ...(needed.metres && { metres: needed.metres.about * groundWaste }),
    ...(needed.grams && { grams: needed.grams.about * groundWaste }),
  }));
  const cords = fit.placements
    .map((placement) => prepareCord(fit, placement))
    .filter((one) => one !== undefined);
  if (cords.length === 0) return { ground };
  const overAll = (of: (one: CordPreparation) => number): number =>
    cords.reduce((sum, one) => sum + timesMade(fit.garment, one.piece) * of(one), 0);
  const tails = overAll(({ tails: { count, eachMm } }) => (count * eachMm) / 1000);
  return {
    ground,
    cord: needOf(
      reckon(gauge, yarn, "cord"),
      overAll(({ make }) => make),
      () => plainYarn(tails, yarn.cord?.tex),
    ),
  };
}

/**
 * @param each yarn in one stitch
 * @param stitches stitches of the ground, or cord stitches
 * @param extraTo what to add to the amount that the surer way says
 */
function needOf(
  each: Reckoning,
  stitches: number,
  extraTo: (needed: YarnAmount<Range>) => YarnAmount<number>,
): YarnNeed {
  const inAll = (one: YarnAmount<Range>): YarnAmount<Range> => ({
    ...(one.metres && { metres: times(one.metres, stitches) }),
    ...(one.grams && { grams: times(one.grams, stitches) }),
  });
  const needed = inAll(surely(each));
  const extra = extraTo(needed);
  return {
    byGauge: inAll(each.byGauge),
    ...(each.byWeight && { byWeight: inAll(each.byWeight) }),
    surer: each.surer,
    extra,
    atHand: {
      ...(needed.metres && { metres: needed.metres.most + (extra.metres ?? 0) }),
      ...(needed.grams && { grams: needed.grams.most + (extra.grams ?? 0) }),
    },
  };
}
