import type { Garment } from "../../garment/garment.ts";
import type { Fit, FittedSection } from "../fit.ts";
import type { FittedSegment } from "../looks.ts";
import { type Breach, breach, costTolerance } from "./breach.ts";
import { amountTaken, countTaken } from "./taken.ts";

/**
 * The cost worked out anew from the garment's preferences and what the fit says of itself.
 *
 * @param engineCost what the engine says the fit costs
 */
export function checkCost(garment: Garment, fit: Fit, engineCost: number): readonly Breach[] {
  const cost = costOfFit(garment, fit);
  return [["the sum of its terms", fit.cost] as const, ["the engine", engineCost] as const]
    .filter(([, told]) => Math.abs(told - cost) > costTolerance)
    .map(([who, told]) => breach("cost", `${cost} by the preferences, ${told} by ${who}`));
}

function costOfFit(garment: Garment, fit: Fit): number {
  const weigh = (name: string): number => garment.weights[name] ?? 1;
  const away = (value: number, prefer: number | undefined): number =>
    prefer === undefined ? 0 : Math.abs(value - prefer);
  let cost = 0;
  for (const look of fit.looks) {
    const { motif, values } = look;
    const grown = fit.placements.find(({ motif: name }) => name === motif.name)?.sections ?? [];
    const grows = motif.quantities.some(({ change }) => change !== undefined);
    for (const { name, prefer, change } of motif.quantities)
      cost +=
        weigh(name) *
        (change === undefined
          ? away(values.get(name)!, prefer)
          : meanOver(grown, (section) => away(section.look.values.get(name)!, prefer)));
    if (motif.kind !== "cord") continue;
    const easeAway = (segments: readonly FittedSegment[]): number =>
      easeAwayFrom(segments, (ease) => 100 * away(ease, motif.ease.prefer));
    cost +=
      weigh("ease") *
      (grows
        ? meanOver(grown, ({ look: { segments }, joins }, repeat) =>
            easeAway(repeat === 0 ? [...segments, ...joins] : segments),
          )
        : easeAway(look.segments));
  }
  for (const placed of fit.placements) {
    const { repeats, columns, gap } = garment.placements[placed.index]!;
    const { bottom, top } = placed.margins;
    cost += weigh("length") * Math.abs(placed.change) + weigh("balance") * Math.abs(bottom - top);
    cost += weigh("repeats") * away(placed.repeats, repeats.prefer);
    cost += weigh("columns") * away(placed.columns, columns.prefer);
    if (placed.columns > 1) cost += weigh("gap") * away(placed.gap, gap.prefer);
  }
  return cost + costOfWaste(garment, fit, weigh("waste"));
}

/** Percent left over of all that is on hand, where that matters; what is worked of unfinished repeats costs nothing. */
function costOfWaste(garment: Garment, fit: Fit, each: number): number {
  const { onHand } = garment;
  if (!onHand?.leastWaste) return 0;
  const taken = countTaken(garment, fit, false);
  return onHand.supplies.reduce(
    (sum, supply) => sum + each * 100 * (1 - amountTaken(garment, supply, taken) / supply.amount),
    0,
  );
}

/** The mean over a motif's distinct segments, loops left aside. */
function easeAwayFrom(segments: readonly FittedSegment[], amount: (ease: number) => number): number {
  const eased = segments.filter(({ fixed }) => fixed === undefined);
  return eased.length === 0 ? 0 : eased.reduce((sum, { ease }) => sum + amount(ease), 0) / eased.length;
}

/** The mean over every repeat of a growing motif; `repeat` counts within its section. */
function meanOver(
  sections: readonly FittedSection[],
  amount: (section: FittedSection, repeat: number) => number,
): number {
  const amounts = sections.flatMap((section) =>
    Array.from({ length: section.repeats }, (_, repeat) => amount(section, repeat)),
  );
  return amounts.reduce((sum, one) => sum + one, 0) / amounts.length;
}
