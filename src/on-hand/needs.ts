import { prepareCord } from "../cord/preparation.ts";
import type { Fit } from "../fit/fit.ts";
import type { Supply } from "../garment/garment.ts";
import { timesMade } from "../garment/times-made.ts";
import { roundUpTo } from "../report/rounding.ts";
import { estimateYarn, type YarnNeed } from "../yarn/estimate.ts";
import { decimalsOf, mostOf } from "./rates.ts";

/** What a garment needs of something that is on hand; amounts in its unit. */
export interface SupplyNeed {
  readonly supply: Supply;
  /** As it is told: rounded up. */
  readonly needed: number;
  /** Not rounded. */
  readonly takes: number;
}

/** What a fit needs of all that its garment has on hand, every piece as often as it is made. */
export function needsOf(fit: Fit): readonly SupplyNeed[] {
  const supplies = fit.garment.onHand?.supplies ?? [];
  if (supplies.length === 0) return [];
  const yarn = estimateYarn(fit);
  return supplies.map((supply) => {
    const takes = takenOf(supply, fit, yarn);
    return { supply, takes, needed: roundUpTo(takes, decimalsOf(supply)) };
  });
}

function takenOf({ of, unit }: Supply, fit: Fit, { ground, cord }: ReturnType<typeof estimateYarn>): number {
  const amount = (need: YarnNeed | undefined): number =>
    (unit === "m" ? need?.atHand.metres : need?.atHand.grams) ?? 0;
  switch (of) {
    case "cord":
      return cordMetres(fit);
    case "cord yarn":
      return amount(cord);
    case "ground yarn":
      return amount(ground);
    case "yarn":
      return amount(ground) + amount(cord);
  }
}

const cordMetres = (fit: Fit): number =>
  fit.placements.reduce(
    (sum, placement) =>
      sum + (timesMade(fit.garment, placement.piece) * (prepareCord(fit, placement)?.lengthMm ?? 0)) / 1000,
    0,
  );

/** What is left over of a supply, as told. */
export const leftOf = ({ supply, needed }: SupplyNeed): number =>
  Number((supply.amount - needed).toFixed(decimalsOf(supply)));

/** The same in percent of it, not rounded. */
export const percentLeft = ({ supply: { amount }, takes }: SupplyNeed): number =>
  (100 * (amount - takes)) / amount;

/** Whether everything lasts. */
export const lasts = (needs: readonly SupplyNeed[]): boolean =>
  needs.every(({ supply, takes }) => takes <= mostOf(supply) + sameAmount);

/** What two ways to add up one amount may differ by. */
const sameAmount = 1e-7;
