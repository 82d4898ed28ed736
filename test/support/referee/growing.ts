import type { ChoiceEntry, GarmentFile, LikeCordEntry, PlacementEntry } from "../garment-file.ts";
import { type Cloth, clothOf } from "./cloth.ts";
import { allowedBetween, choice, fraction, highestOf, isAllowed } from "./entries.ts";
import { type Edges, fieldOf, lengthChanges } from "./layouts.ts";
import { amountBeside, weightOf } from "./weights.ts";

/** A crossed cord whose spread may change by so many needles from one repeat to the next. */
export interface GrowingEntry extends Omit<LikeCordEntry, "spread"> {
  readonly spread: ChoiceEntry & { readonly change: number };
}

export type Waste = (usedStitches: number) => number | undefined;

/**
 * The least that a growing crossed cord costs on its one straight or tapering piece, found by trying every interval,
 * length, number of repeats, bottom margin and every way its spread can go; undefined where none fits.
 *
 * @param waste what it costs that so many cord stitches are used of what is on hand; undefined where it does not last
 */
export function cheapestGrowth(
  garment: GarmentFile,
  motif: GrowingEntry,
  edges: Edges,
  waste: Waste = () => 0,
): number | undefined {
  const cloth = clothOf(garment);
  const [placement] = garment.place;
  let best: number | undefined;
  const intervals = choice(motif.interval ?? { allow: "2..12", prefer: 4 });
  for (const interval of allowedBetween(intervals.allow, 2, highestOf(intervals.allow!))) {
    const settled = weightOf(garment.weights ?? {}, "interval") * amountBeside(intervals.prefer, interval);
    for (const change of lengthChanges(garment, cloth, placement!.on)) {
      const cost = cheapestIn(garment, cloth, placement!, motif, edges, waste, interval, change);
      if (cost !== undefined && settled + cost < (best ?? Number.POSITIVE_INFINITY)) best = settled + cost;
    }
  }
  return best;
}

function cheapestIn(
  garment: GarmentFile,
  cloth: Cloth,
  placement: PlacementEntry,
  motif: GrowingEntry,
  edges: Edges,
  waste: Waste,
  interval: number,
  change: number,
): number | undefined {
  const weights = garment.weights ?? {};
  const field = fieldOf(garment, cloth, placement);
  const rows = field.to - field.from + change;
  const repeatsChoice = choice(placement.repeats);
  const spreads = allowedBetween(motif.spread.allow, 2, highestOf(motif.spread.allow!));
  let best: number | undefined;
  for (const repeats of allowedBetween(repeatsChoice.allow, 1, rows)) {
    const slack = rows - interval - repeats * 2 * interval;
    for (let bottom = 0; bottom <= slack; bottom++) {
      if (!isAllowed(placement.margins?.bottom, bottom)) continue;
      if (!isAllowed(placement.margins?.top, slack - bottom)) continue;
      const firstRow = field.from + bottom;
      const fits = (repeat: number, spread: number): boolean => {
        const from = firstRow + (repeat === 0 ? 0 : interval + repeat * 2 * interval);
        const to = firstRow + interval + (repeat + 1) * 2 * interval;
        for (let row = from; row <= to; row++)
          for (const side of ["left", "right"] as const)
            if (edges(placement.on, change, side, row) - spread < (placement.margins?.side?.least ?? 0))
              return false;
        return true;
      };
      for (const { amount, used } of growths(garment, cloth, motif, interval, spreads, repeats, fits)) {
        const wasted = waste(used);
        if (wasted === undefined) continue;
        const cost =
          wasted +
          weightOf(weights, "length") * Math.abs(change) +
          weightOf(weights, "balance") * Math.abs(2 * bottom - slack) +
          weightOf(weights, "repeats") * amountBeside(repeatsChoice.prefer, repeats) +
          amount;
        if (cost < (best ?? Number.POSITIVE_INFINITY)) best = cost;
      }
    }
  }
  return best;
}

/** What every way through the spreads costs in ease and spread, the mean over its repeats, and the cord it uses. */
function* growths(
  garment: GarmentFile,
  cloth: Cloth,
  motif: GrowingEntry,
  interval: number,
  spreads: readonly number[],
  repeats: number,
  fits: (repeat: number, spread: number) => boolean,
): Generator<{ readonly amount: number; readonly used: number }> {
  const weights = garment.weights ?? {};
  const path: number[] = [];
  const amounts: number[] = [];
  const cord: number[] = [];
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  function* on(repeat: number): Generator<{ readonly amount: number; readonly used: number }> {
    if (repeat === repeats) {
      yield { amount: sum(amounts) / repeats, used: sum(cord) };
      return;
    }
    for (const spread of spreads) {
      const below = path.at(-1) ?? spread;
      if (Math.abs(spread - below) > motif.spread.change) continue;
      // A repeat reaches as far as the wider of its own spread and the one it comes from.
      if (!fits(repeat, Math.max(spread, below))) continue;
      const counted = countedAt(cloth, motif, interval, spread, below);
      if (counted === undefined) continue;
      path.push(spread);
      const [leadIn, into, crossing] = [spread - 1, below + spread - 1, 2 * spread - 1].map(
        (needles) => counted.pickups.get(needles)!,
      ) as [number, number, number];
      // One stitch is hung at the start of each arm, which then both take the same.
      cord.push((repeat === 0 ? 2 + 2 * leadIn : 0) + 2 * (into + crossing));
      amounts.push(
        weightOf(weights, "ease") * counted.away +
          weightOf(weights, "spread") * amountBeside(motif.spread.prefer, spread),
      );
      yield* on(repeat + 1);
      path.pop();
      amounts.pop();
      cord.pop();
    }
  }
  yield* on(0);
}

/**
 * Percentage points of ease, the mean over a repeat's segments, each counted as near to the preferred ease as can be; and
 * the counts, by needles across.
 */
function countedAt(
  cloth: Cloth,
  { ease }: GrowingEntry,
  interval: number,
  spread: number,
  below: number,
): { readonly away: number; readonly pickups: ReadonlyMap<number, number> } | undefined {
  const [from, to, prefer] = [ease?.from ?? "-5 %", ease?.to ?? "15 %", ease?.prefer ?? "2 %"].map(fraction);
  const across = new Set([spread - 1, 2 * spread - 1]);
  if (below !== spread) across.add(below + spread - 1);
  const pickups = new Map<number, number>();
  let sum = 0;
  for (const needles of across) {
    const spanMm = Math.hypot(needles * cloth.stitchMm, interval * cloth.rowMm);
    let nearest = Number.POSITIVE_INFINITY;
    for (let pickup = 1; pickup < 200; pickup++) {
      const eased = (pickup * cloth.cordStitchMm!) / spanMm - 1;
      if (eased < from! - 1e-9 || eased > to! + 1e-9) continue;
      const away = 100 * Math.abs(eased - prefer!);
      if (away >= nearest) continue;
      nearest = away;
      pickups.set(needles, pickup);
    }
    if (nearest === Number.POSITIVE_INFINITY) return undefined;
    sum += nearest;
  }
  return { away: sum / across.size, pickups };
}
