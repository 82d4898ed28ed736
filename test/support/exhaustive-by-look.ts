import type { GarmentFile, PlacementEntry } from "./garment-file.ts";
import { clothOf } from "./referee/cloth.ts";
import { type Edges, fieldOf, type Layout, layoutsOf, lengthChanges } from "./referee/layouts.ts";
import { type Look, looksOf } from "./referee/looks.ts";
import { keepsLoops, wearerRules } from "./referee/wearer.ts";

/** The cheapest way to have a motif in a garment, its look and all its placements together. */
export interface LookFit {
  readonly cost: number;
  readonly look: Look;
  /** In the order of the motif's placements. */
  readonly layouts: readonly Layout[];
}

/**
 * For each kind of look that `keyOf` tells apart the cheapest way to have one motif in a garment, by trying every look
 * and every layout. The motif has its pieces for itself, and no placement of it is matched with another.
 */
export function leastByLook(
  garment: GarmentFile,
  motif: string,
  edges: Edges,
  keyOf: (look: Look) => string,
): Map<string, LookFit> {
  const least = new Map<string, LookFit>();
  const placements = garment.place.filter((placement) => placement.motif === motif);
  const wearer = wearerRules(garment);
  if (placements.some(wearer.forbids)) return least;
  const cloth = clothOf(garment);
  const known = new Map<string, Layout | undefined>();
  const bestLayout = (placement: PlacementEntry, look: Look): Layout | undefined => {
    const key = JSON.stringify([placement.on, look.quantities]);
    if (!known.has(key)) known.set(key, searched(placement, look));
    return known.get(key);
  };
  const searched = (placement: PlacementEntry, look: Look): Layout | undefined => {
    const field = fieldOf(garment, cloth, placement);
    let best: Layout | undefined;
    for (const change of lengthChanges(garment, cloth, placement.on))
      for (const layout of layoutsOf(garment, cloth, placement, look, edges, { ...field, change }))
        if (!best || comesFirst(layout, best)) best = layout;
    return best;
  };
  for (const look of looksOf(garment.motifs[motif]!, cloth, garment.weights ?? {})) {
    if (placements.some(wearer.limitsLoops) && !keepsLoops(look, cloth)) continue;
    const layouts = placements.flatMap((placement) => bestLayout(placement, look) ?? []);
    if (layouts.length < placements.length) continue;
    const cost = layouts.reduce((sum, layout) => sum + layout.cost, look.cost);
    const key = keyOf(look);
    if (cost < (least.get(key)?.cost ?? Number.POSITIVE_INFINITY)) least.set(key, { cost, look, layouts });
  }
  return least;
}

/** Cheaper; where that is the same, less change of length, then fewer repeats, then further down. */
function comesFirst(one: Layout, other: Layout): boolean {
  if (Math.abs(one.cost - other.cost) > 1e-9) return one.cost < other.cost;
  const [change, otherChange] = [Math.abs(one.rowsChanged), Math.abs(other.rowsChanged)];
  if (change !== otherChange) return change < otherChange;
  if (one.repeats !== other.repeats) return one.repeats < other.repeats;
  return one.rowsChanged === other.rowsChanged && one.firstRow < other.firstRow;
}
