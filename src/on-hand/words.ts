import type { Stock, Supply } from "../garment/garment.ts";
import { leftOf, type SupplyNeed } from "./needs.ts";

/** "4 m", "12.5 g". */
export const stockWords = ({ amount, unit }: Stock): string => `${Number(amount.toFixed(3))} ${unit}`;

/** "4 m of cord", "300 g of ground yarn (6 balls)". */
export const supplyWords = (supply: Supply): string =>
  `${stockWords(supply)} of ${supply.of}${supply.balls ? ` (${ballsWords(supply.balls)})` : ""}`;

const ballsWords = ({ count }: NonNullable<Supply["balls"]>): string =>
  `${count} ${count === 1 ? "ball" : "balls"}`;

/**
 * What a fit takes of a supply: "10.21 m needed of 12 m, 1.79 m left over", and how many balls that is, where it comes in
 * balls.
 */
export function needWords(need: SupplyNeed): string {
  const { supply, needed } = need;
  const { unit, balls } = supply;
  const of = `${stockWords({ amount: needed, unit })} needed of ${stockWords(supply)}`;
  const inBalls = balls ? ` (${ballsNeeded(needed, balls)})` : "";
  return `${of}${inBalls}, ${stockWords({ amount: leftOf(need), unit })} left over`;
}

function ballsNeeded(needed: number, balls: NonNullable<Supply["balls"]>): string {
  const count = Math.ceil(Number((needed / balls.each.amount).toFixed(6)));
  return `${count} of ${ballsWords(balls)}`;
}
