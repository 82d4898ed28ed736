import { prepareCord } from "../cord/preparation.ts";
import type { Fit, FittedPlacement } from "../fit/fit.ts";
import { growingQuantity } from "../motif/growing-quantity.ts";
import { growthWords } from "./growth-words.ts";
import { counted, placementWords } from "./words.ts";

/** How a rival differs from the best fit, in a knitter's words, the most visible first; empty where it does not. */
export function differences(best: Fit, rival: Fit): readonly string[] {
  return [...lookDifferences(best, rival), ...placementDifferences(best, rival)];
}

function lookDifferences(best: Fit, rival: Fit): readonly string[] {
  return rival.looks.flatMap((look, index) => {
    const other = best.looks[index]!;
    const whose = rival.looks.length > 1 ? `${look.motif.name}: ` : "";
    const growing = growingQuantity(look.motif);
    const quantities = [...look.values]
      .filter(([name]) => name !== growing?.name)
      .filter(([name, value]) => other.values.get(name) !== value)
      .map(([name, value]) => `${whose}${name} ${value} instead of ${other.values.get(name)}`);
    if (quantities.length > 0 || growing) return quantities;
    return look.segments
      .filter(({ pickup }, at) => pickup !== other.segments[at]?.pickup)
      .map(({ name, pickup }) => `${whose}${name} count ${pickup}`);
  });
}

function placementDifferences(best: Fit, rival: Fit): readonly string[] {
  return rival.placements.flatMap((placement, index) => {
    const other = best.placements[index]!;
    const whose = rival.placements.length > 1 ? `${placementWords(rival.placements, placement)}: ` : "";
    return [
      growthWords(placement) === growthWords(other) ? undefined : growthWords(placement),
      change(placement.repeats - other.repeats, "more repeat", "fewer repeat"),
      change(placement.columns - other.columns, "more column", "fewer column"),
      placement.gap === other.gap ? undefined : `gap ${placement.gap} instead of ${other.gap}`,
      lengthDifference(placement.change - other.change),
      cordDifference(best, other, rival, placement),
    ]
      .filter((one) => one !== undefined)
      .map((one) => `${whose}${one}`);
  });
}

const change = (amount: number, more: string, fewer: string): string | undefined =>
  amount === 0 ? undefined : counted(Math.abs(amount), amount > 0 ? more : fewer);

const lengthDifference = (rows: number): string | undefined =>
  rows === 0 ? undefined : `${counted(Math.abs(rows), "row")} ${rows > 0 ? "longer" : "shorter"}`;

function cordDifference(
  best: Fit,
  other: FittedPlacement,
  rival: Fit,
  placement: FittedPlacement,
): string | undefined {
  const make = (fit: Fit, one: FittedPlacement): number => prepareCord(fit, one)?.make ?? 0;
  const more = make(rival, placement) - make(best, other);
  if (more === 0) return undefined;
  return `${counted(Math.abs(more), "cord stitch", "cord stitches")} ${more > 0 ? "more" : "less"} to make`;
}
