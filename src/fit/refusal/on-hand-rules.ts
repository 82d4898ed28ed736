import type { Garment } from "../../garment/garment.ts";
import { supplyWords } from "../../on-hand/words.ts";
import type { NamedRule } from "./rule.ts";

/** What a garment may take of each thing that is on hand. */
export const onHandRules = ({ onHand }: Garment): readonly NamedRule[] =>
  (onHand?.supplies ?? []).map((supply) => ({
    rule: supply.path.join("."),
    path: supply.path,
    words: `only ${supplyWords(supply)} is on hand`,
    lift: (garment) => withoutSupply(garment, supply.of),
  }));

function withoutSupply(garment: Garment, of: string): Garment {
  const { onHand, ...unlimited } = garment;
  if (!onHand) return unlimited;
  const supplies = onHand.supplies.filter((supply) => supply.of !== of);
  return supplies.length > 0 ? { ...garment, onHand: { ...onHand, supplies } } : unlimited;
}
