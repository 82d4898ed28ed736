import type { GarmentFile, PlacementEntry } from "../garment-file.ts";
import type { Cloth, Stretch } from "./cloth.ts";
import { type Edges, fieldChanges, fieldOf, type Layout, layoutsOf, lengthChanges } from "./layouts.ts";
import type { Look } from "./looks.ts";

/** The cheapest layouts of all placements on one piece. */
export interface PieceFit {
  readonly cost: number;
  readonly layouts: ReadonlyMap<PlacementEntry, Layout>;
}

type Pair<Part> = readonly [Part, Part];

/**
 * The cheapest layouts of two placements on one piece. Where their fields are the same, so is the length
 * change; where one lies above the other, the changes add up and the sum is what `grow` and `shrink` limit.
 * They never share both a row (first and last included) and a needle.
 *
 * Throws for fields that overlap otherwise, and for a cable that draws the shared piece in.
 */
export function bestOfTwo(
  garment: GarmentFile,
  cloth: Cloth,
  placements: Pair<PlacementEntry>,
  looks: Readonly<Record<string, Look>>,
  edges: Edges | undefined,
): PieceFit | undefined {
  const [first, second] = placements;
  const pairOfLooks: Pair<Look> = [looks[first.motif]!, looks[second.motif]!];
  if (pairOfLooks.some((look) => look.drawnIn > 0)) throw new Error("a shared piece is drawn in");
  const fields: Pair<Stretch> = [fieldOf(garment, cloth, first), fieldOf(garment, cloth, second)];
  let best: PieceFit | undefined;
  for (const [own, other, same] of changesOf(garment, cloth, first.on, fields)) {
    const stretched: Pair<Stretch> = [
      { ...fields[0], change: own },
      { ...fields[1], change: other },
    ];
    const layouts = (at: 0 | 1): Layout[] =>
      cheapestOfEachPlace(
        layoutsOf(
          garment,
          cloth,
          placements[at],
          pairOfLooks[at],
          edges,
          stretched[at],
          same ? [] : [stretched[1 - at]!],
        ),
      );
    const seconds = layouts(1);
    for (const one of layouts(0)) {
      for (const two of seconds) {
        const cost = one.cost + two.cost;
        if (cost >= (best?.cost ?? Number.POSITIVE_INFINITY) || collide(one, two)) continue;
        best = {
          cost,
          layouts: new Map([
            [first, one],
            [second, two],
          ]),
        };
      }
    }
  }
  return best;
}

/** Every pair of length changes, and whether the two are one and the same change. */
function changesOf(
  garment: GarmentFile,
  cloth: Cloth,
  piece: string,
  [one, two]: Pair<Stretch>,
): [number, number, boolean][] {
  const changes = lengthChanges(garment, cloth, piece);
  if (one.from === two.from && one.to === two.to) return changes.map((change) => [change, change, true]);
  if (one.to > two.from && two.to > one.from) throw new Error(`fields on "${piece}" overlap in part`);
  const each = fieldChanges(garment, cloth, piece);
  return each
    .flatMap((own) => each.map((other): [number, number, boolean] => [own, other, false]))
    .filter(([own, other]) => changes.includes(own + other));
}

// Layouts that cover the same rows and needles meet the other placement alike, so that only their costs differ.
function cheapestOfEachPlace(layouts: Iterable<Layout>): Layout[] {
  const places = new Map<string, Layout>();
  for (const layout of layouts) {
    const place = [layout.firstRow, layout.lastRow, layout.panel.from, layout.panel.to].join();
    if (layout.cost < (places.get(place)?.cost ?? Number.POSITIVE_INFINITY)) places.set(place, layout);
  }
  return [...places.values()];
}

const collide = (one: Layout, two: Layout): boolean =>
  one.firstRow <= two.lastRow &&
  two.firstRow <= one.lastRow &&
  one.panel.from < two.panel.to &&
  two.panel.from < one.panel.to;
