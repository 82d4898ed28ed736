import type { Garment } from "../../garment/garment.ts";
import type { Fit } from "../fit.ts";
import { type Breach, breach, costTolerance } from "./breach.ts";

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
  for (const { motif, values, segments } of fit.looks) {
    for (const { name, prefer } of motif.quantities) cost += weigh(name) * away(values.get(name)!, prefer);
    const eased = segments.filter(({ fixed }) => fixed === undefined);
    if (motif.kind !== "cord" || eased.length === 0) continue;
    const { prefer } = motif.ease;
    const eases = eased.map(({ ease }) => 100 * away(ease, prefer));
    cost += (weigh("ease") * eases.reduce((sum, one) => sum + one, 0)) / eases.length;
  }
  for (const placed of fit.placements) {
    const { repeats, columns, gap } = garment.placements[placed.index]!;
    const { bottom, top } = placed.margins;
    cost += weigh("length") * Math.abs(placed.change) + weigh("balance") * Math.abs(bottom - top);
    cost += weigh("repeats") * away(placed.repeats, repeats.prefer);
    cost += weigh("columns") * away(placed.columns, columns.prefer);
    if (placed.columns > 1) cost += weigh("gap") * away(placed.gap, gap.prefer);
  }
  return cost;
}
