import type { FittedPlacement } from "../fit/fit.ts";
import { growingQuantity } from "../motif/growing-quantity.ts";
import { counted } from "./words.ts";

/** How a growing motif's quantity goes upward: "spread 10 for 1 repeat, 12 for 6"; undefined for one that stays alike. */
export function growthWords({ sections }: FittedPlacement): string | undefined {
  const quantity = sections[0] && growingQuantity(sections[0].look.motif);
  if (!quantity) return undefined;
  const stays = sections.map(({ look, repeats }, index) => {
    const value = look.values.get(quantity.name)!;
    return `${value} for ${index === 0 ? counted(repeats, "repeat") : repeats}`;
  });
  return `${quantity.name} ${stays.join(", ")}`;
}
