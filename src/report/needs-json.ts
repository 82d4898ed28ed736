import type { CordPreparation } from "../cord/preparation.ts";
import type { Fit } from "../fit/fit.ts";
import { leftOf, needsOf } from "../on-hand/needs.ts";
import { cautionsFor } from "../safety/cautions.ts";
import { estimateYarn, type YarnNeed } from "../yarn/estimate.ts";
import type { Range } from "../yarn/range.ts";
import type { YarnAmount } from "../yarn/reckoning.ts";
import { roundUpTo } from "./rounding.ts";

/**
 * What has to be made of cord for one placement. `used`, `make`, `passes` and `length_mm` are sums over its cords, each
 * of which is told by itself; tails are yarn and not part of them.
 */
export const cordToJson = ({ needles, cords, tails, ...sums }: CordPreparation): object => ({
  used: sums.used,
  make: sums.make,
  passes: sums.passes,
  length_mm: roundUpTo(sums.lengthMm, 1),
  needles,
  reserve: sums.make - sums.used,
  tails: { count: tails.count, each_mm: tails.eachMm },
  cords: cords.map(({ strands, columns, times, used, make, passes, lengthMm, markers }) => ({
    strands,
    times,
    ...(columns && { columns }),
    used,
    make,
    passes,
    length_mm: roundUpTo(lengthMm, 1),
    markers: { every: markers.every, count: markers.count, after: markers.after },
  })),
});

/** Yarn in metres and grams, what all pieces take of what is on hand, and what to be careful of. */
export function needsToJson(fit: Fit): object {
  const { ground, cord } = estimateYarn(fit);
  const onHand = needsOf(fit);
  return {
    ...(onHand.length > 0 && {
      on_hand: onHand.map((need) => ({
        supply: need.supply.of,
        unit: need.supply.unit,
        amount: need.supply.amount,
        needed: need.needed,
        left_over: leftOf(need),
      })),
    }),
    yarn: { ground: needToJson(ground), ...(cord && { cord: needToJson(cord) }) },
    cautions: cautionsFor(fit),
  };
}

const needToJson = ({ byGauge, byWeight, surer, extra, atHand }: YarnNeed): object => ({
  by_gauge: amountToJson(byGauge, rangeToJson),
  ...(byWeight && { by_weight: amountToJson(byWeight, rangeToJson) }),
  surer,
  extra: amountToJson(extra, up),
  at_hand: amountToJson(atHand, up),
});

const amountToJson = <Value>(
  { metres, grams }: YarnAmount<Value>,
  told: (value: Value) => object | number,
): object => ({
  ...(metres !== undefined && { metres: told(metres) }),
  ...(grams !== undefined && { grams: told(grams) }),
});

/** Tenths, and never less than it takes. */
const up = (value: number): number => roundUpTo(value, 1);

const rangeToJson = ({ least, about, most }: Range): object => ({
  least: Math.floor(least * 10) / 10,
  about: up(about),
  most: up(most),
});
