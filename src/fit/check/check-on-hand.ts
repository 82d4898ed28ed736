import type { Garment, Supply } from "../../garment/garment.ts";
import type { Fit } from "../fit.ts";
import { type Breach, breach } from "./breach.ts";
import { amountTaken, countTaken } from "./taken.ts";

/** That everything lasts: what all pieces take, as it is told, against what is on hand. */
export function checkOnHand(garment: Garment, fit: Fit): readonly Breach[] {
  if (!garment.onHand) return [];
  const taken = countTaken(garment, fit, true);
  return garment.onHand.supplies.flatMap((supply) => {
    const amount = amountTaken(garment, supply, taken);
    return lastsFor(supply, amount)
      ? []
      : [breach(`on hand: ${supply.of}`, `${amount} ${supply.unit} of ${supply.amount} ${supply.unit}`)];
  });
}

/**
 * What is told is rounded up, cord to a millimetre and yarn to a tenth, and may not be more than there is. A written
 * amount, such as 0.3 m, is a hair off as it is stored.
 */
export function lastsFor({ of, amount }: Supply, takes: number): boolean {
  const scale = of === "cord" ? 1000 : 10;
  return Math.ceil(scale * takes - 1e-6) <= scale * amount + 1e-6;
}
