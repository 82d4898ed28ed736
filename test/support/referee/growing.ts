import type { ChoiceEntry, GarmentFile, LikeCordEntry, PlacementEntry } from "../garment-file.ts";
import { type Cloth, clothOf } from "./cloth.ts";
import { allowedBetween, choice, fraction, highestOf, isAllowed } from "./entries.ts";
import { type Edges, fieldOf, lengthChanges } from "./layouts.ts";
import { amountBeside, weightOf } from "./weights.ts";

/** A crossed cord whose spread may change by so many needles from one repeat to the next. */
export interface GrowingEntry extends Omit<LikeCordEntry, "spread"> {
  readonly spread: ChoiceEntry & { readonly change: number };
}

/**
 * The least that a growing crossed cord costs on its one straight or tapering piece, found by trying every interval,
 * length, number of repeats, bottom margin and every way its spread can go; undefined where none fits.
 */
export function cheapestGrowth(garment: GarmentFile, motif: GrowingEntry, edges: Edges): number | undefined {
  const cloth = clothOf(garment);
  const [placement] = garment.place;
  let best: number | undefined;
  const intervals = choice(motif.interval ?? { allow: "2..12", prefer: 4 });
  for (const interval of allowedBetween(intervals.allow, 2, highestOf(intervals.allow!))) {
    const settled = weightOf(garment.weights ?? {}, "interval") * amountBeside(intervals.prefer, interval);
    for (const change of lengthChanges(garment, cloth, placement!.on)) {
      const cost = cheapestIn(garment, cloth, placement!, motif, edges, interval, change);
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
      for (const amount of growths(garment, cloth, motif, interval, spreads, repeats, fits)) {
        const cost =
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

/** What every way through the spreads costs in ease and spread: the mean over its repeats. */
function* growths(
  garment: GarmentFile,
  cloth: Cloth,
  motif: GrowingEntry,
  interval: number,
  spreads: readonly number[],
  repeats: number,
  fits: (repeat: number, spread: number) => boolean,
): Generator<number> {
  const weights = garment.weights ?? {};
  const path: number[] = [];
  const amounts: number[] = [];
  function* on(repeat: number): Generator<number> {
    if (repeat === repeats) {
      yield amounts.reduce((sum, amount) => sum + amount, 0) / repeats;
      return;
    }
    for (const spread of spreads) {
      const below = path.at(-1) ?? spread;
      if (Math.abs(spread - below) > motif.spread.change) continue;
      // A repeat reaches as far as the wider of its own spread and the one it comes from.
      if (!fits(repeat, Math.max(spread, below))) continue;
      const ease = easeAway(cloth, motif, interval, spread, below);
      if (ease === undefined) continue;
      path.push(spread);
      amounts.push(
        weightOf(weights, "ease") * ease +
          weightOf(weights, "spread") * amountBeside(motif.spread.prefer, spread),
      );
      yield* on(repeat + 1);
      path.pop();
      amounts.pop();
    }
  }
  yield* on(0);
}

/** Percentage points of ease, the mean over a repeat's segments, counted as near to the preferred ease as can be. */
function easeAway(
  cloth: Cloth,
  { ease }: GrowingEntry,
  interval: number,
  spread: number,
  below: number,
): number | undefined {
  const [from, to, prefer] = [ease?.from ?? "-5 %", ease?.to ?? "15 %", ease?.prefer ?? "2 %"].map(fraction);
  const across = new Set([spread - 1, 2 * spread - 1]);
  if (below !== spread) across.add(below + spread - 1);
  let sum = 0;
  for (const needles of across) {
    const spanMm = Math.hypot(needles * cloth.stitchMm, interval * cloth.rowMm);
    let nearest: number | undefined;
    for (let pickup = 1; pickup < 200; pickup++) {
      const eased = (pickup * cloth.cordStitchMm!) / spanMm - 1;
      if (eased < from! - 1e-9 || eased > to! + 1e-9) continue;
      nearest = Math.min(nearest ?? Number.POSITIVE_INFINITY, 100 * Math.abs(eased - prefer!));
    }
    if (nearest === undefined) return undefined;
    sum += nearest;
  }
  return sum / across.size;
}
