import { type CordPreparation, prepareCord } from "../../cord/preparation.ts";
import type { Fit } from "../../fit/fit.ts";
import { timesMade } from "../../garment/times-made.ts";
import { roundUpTo } from "../../report/rounding.ts";
import { estimateYarn, type YarnNeed } from "../../yarn/estimate.ts";
import { line, type Reading, type TableLine } from "./line.ts";

/** Cord of the whole garment where it takes several, and the yarn to have at hand where the file tells of yarn. */
export const totalLines = (fits: readonly Fit[]): readonly TableLine[] => [
  ...cordLines(fits),
  ...(["ground", "cord"] as const).flatMap((whose) => yarnLines(fits, whose)),
];

function cordLines(fits: readonly Fit[]): readonly TableLine[] {
  const overAll =
    (of: (cord: CordPreparation) => number): ((fit: Fit) => number) =>
    (fit) =>
      fit.placements
        .flatMap((placement) => prepareCord(fit, placement) ?? [])
        .reduce((sum, cord) => sum + timesMade(fit.garment, cord.piece) * of(cord), 0);
  if (!fits.some((fit) => overAll(() => 1)(fit) > 1)) return [];
  const lengthMm = overAll((cord) => cord.lengthMm);
  return [
    ...line(
      fits,
      "cord stitches to make",
      "cord stitches",
      overAll(({ make }) => make),
    ),
    ...line(fits, "length of the cord", "m", (fit) => roundUpTo(lengthMm(fit) / 1000, 2)),
  ];
}

function yarnLines(fits: readonly Fit[], whose: "ground" | "cord"): readonly TableLine[] {
  if (!fits.some((fit) => fit.garment.yarn[whose])) return [];
  const needs = new Map(fits.map((fit) => [fit, estimateYarn(fit)[whose]]));
  const atHand =
    (unit: keyof YarnNeed["atHand"]): Reading =>
    (fit) => {
      const amount = needs.get(fit)?.atHand[unit];
      return amount === undefined ? undefined : roundUpTo(amount, 0);
    };
  return [
    ...line(fits, `${whose} yarn at hand`, "g", atHand("grams")),
    ...line(fits, `${whose} yarn at hand`, "m", atHand("metres")),
  ];
}
