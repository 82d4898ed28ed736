import type { Garment, Placement } from "../../garment/garment.ts";
import type { Fit, FittedLook, FittedPlacement, FittedSection } from "../fit.ts";
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
  // A sum that comes to no number is as far from what is told as can be.
  return [["the sum of its terms", fit.cost] as const, ["the engine", engineCost] as const]
    .filter(([, told]) => !(Math.abs(told - cost) <= costTolerance))
    .map(([who, told]) => breach("cost", `${cost} by the preferences, ${told} by ${who}`));
}

type Weigh = (term: string) => number;

function costOfFit(garment: Garment, fit: Fit): number {
  const { weights } = garment;
  const weigh: Weigh = (term) => (Object.hasOwn(weights, term) ? weights[term]! : 1);
  const looks = fit.looks.map((look) => {
    const placed = fit.placements.filter(({ motif }) => motif === look.motif.name);
    return costOfLook(
      weigh,
      look,
      placed.flatMap(({ sections }) => sections),
    );
  });
  const placements = fit.placements.map((placed) =>
    costOfPlacement(weigh, garment.placements[placed.index]!, placed),
  );
  return sumOf(looks) + sumOf(placements) + costOfWaste(garment, fit, weigh("waste"));
}

/** @param sections what is worked of its motif, which a motif that grows is judged by */
function costOfLook(weigh: Weigh, look: FittedLook, sections: readonly FittedSection[]): number {
  const { motif, values, segments } = look;
  const preferred = motif.kind === "cord" ? motif.ease.prefer : undefined;
  const quantities = motif.quantities.map(
    ({ name, prefer, change }) =>
      weigh(name) *
      (change === undefined
        ? away(values.get(name)!, prefer)
        : meanOver(sections, (section) => away(section.look.values.get(name)!, prefer))),
  );
  const grows = motif.quantities.some(({ change }) => change !== undefined);
  const ease = grows
    ? meanOver(sections, (section, repeat) => {
        const { look: worked, joins } = section;
        return easeAway(repeat === 0 ? [...worked.segments, ...joins] : worked.segments, preferred);
      })
    : easeAway(segments, preferred);
  return sumOf(quantities) + weigh("ease") * ease;
}

function costOfPlacement(weigh: Weigh, asked: Placement, placed: FittedPlacement): number {
  const { bottom, top } = placed.margins;
  return sumOf([
    weigh("length") * Math.abs(placed.change),
    weigh("balance") * Math.abs(bottom - top),
    weigh("repeats") * away(placed.repeats, asked.repeats.prefer),
    weigh("columns") * away(placed.columns, asked.columns.prefer),
    placed.columns > 1 ? weigh("gap") * away(placed.gap, asked.gap.prefer) : 0,
  ]);
}

/** Percent left over of all that is on hand, where that matters; what is worked of unfinished repeats costs nothing. */
function costOfWaste(garment: Garment, fit: Fit, each: number): number {
  const { onHand } = garment;
  if (!onHand?.leastWaste) return 0;
  const taken = countTaken(garment, fit, false);
  return sumOf(
    onHand.supplies.map((supply) => each * 100 * (1 - amountTaken(garment, supply, taken) / supply.amount)),
  );
}

const away = (value: number, prefer: number | undefined): number =>
  prefer === undefined ? 0 : Math.abs(value - prefer);

/** Percentage points from the ease that is preferred, the mean over distinct segments, loops left aside. */
function easeAway(segments: readonly FittedSegment[], prefer: number | undefined): number {
  const eased = segments.filter(({ fixed }) => fixed === undefined);
  return eased.length === 0 ? 0 : meanOf(eased.map(({ ease }) => 100 * away(ease, prefer)));
}

/** The mean over every repeat of a growing motif; `repeat` counts within its section. */
const meanOver = (
  sections: readonly FittedSection[],
  amount: (section: FittedSection, repeat: number) => number,
): number =>
  meanOf(
    sections.flatMap((section) =>
      Array.from({ length: section.repeats }, (_, repeat) => amount(section, repeat)),
    ),
  );

const sumOf = (amounts: readonly number[]): number => amounts.reduce((sum, one) => sum + one, 0);

const meanOf = (amounts: readonly number[]): number => sumOf(amounts) / amounts.length;
