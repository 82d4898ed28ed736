import type { GarmentFile, PlacementEntry } from "./garment-file.ts";
import type { KnittedStitches } from "./knitted-stitches.ts";
import { type Cloth, clothOf, type Stretch } from "./referee/cloth.ts";
import { type Edges, fieldOf, type Layout, layoutsOf, lengthChanges } from "./referee/layouts.ts";
import { type Look, looksOf } from "./referee/looks.ts";
import { amountOf, cordOfColumn, nothing, suppliesOf, type Use } from "./referee/supplies.ts";

/** The least that something costs, for each use that it can come to. */
type CostByUse = ReadonlyMap<string, { readonly use: Use; readonly cost: number }>;

/**
 * What the cheapest fit costs that keeps to what is on hand, by trying every look of every motif and, under it, every
 * layout of every placement. Only of what takes the same of everything the cheapest is kept. Undefined where none fits.
 *
 * Throws where the garment is not one it can judge: more than two placements on one piece, meetings or matches.
 */
export function exhaustiveOnHand(
  garment: GarmentFile,
  edges: Edges,
  stitches: KnittedStitches,
): number | undefined {
  if (garment.match || garment.place.some(({ meet }) => meet)) throw new Error("no meetings are judged here");
  const reads = whatIsRead(garment);
  const pieces = Object.keys(garment.pieces);
  const plain = pieces
    .filter((name) => !garment.place.some(({ on }) => on === name))
    .reduce((sum, name) => sum + timesMade(garment, name) * stitches(name, [], 0), 0);
  let all: CostByUse = costs([{ use: { ...nothing, groundStitches: plain }, cost: 0 }], reads);
  for (const group of groupsOf(garment))
    all = sums(all, ofGroup(garment, group, edges, stitches, reads), reads);
  let best: number | undefined;
  for (const { use, cost } of all.values()) {
    const waste = wasteOf(garment, use);
    if (waste !== undefined && cost + waste < (best ?? Number.POSITIVE_INFINITY)) best = cost + waste;
  }
  return best;
}

interface Reads {
  readonly ground: boolean;
  readonly cord: boolean;
}

function whatIsRead(garment: GarmentFile): Reads {
  const names = suppliesOf(garment["on hand"]!).map(({ name }) => name);
  return {
    ground: names.some((name) => name === "ground yarn" || name === "yarn"),
    cord: names.some((name) => name !== "ground yarn"),
  };
}

/** What the rest of everything on hand costs; undefined where there is not enough, told amounts being rounded up. */
function wasteOf(garment: GarmentFile, use: Use): number | undefined {
  const onHand = garment["on hand"]!;
  const weight = onHand.prefer === "least waste" ? (garment.weights?.waste ?? 0.1) : 0;
  let waste = 0;
  for (const { name, amount, unit } of suppliesOf(onHand)) {
    const takes = amountOf(garment, name, unit, use);
    const steps = name === "cord" ? 1000 : 10;
    if (Math.ceil(takes * steps - 1e-6) > amount * steps + 1e-6) return undefined;
    waste += weight * 100 * (1 - takes / amount);
  }
  return waste;
}

const timesMade = (garment: GarmentFile, piece: string): number => garment.pieces[piece]!.make ?? 1;

function costs(all: Iterable<{ readonly use: Use; readonly cost: number }>, reads: Reads): CostByUse {
  const least = new Map<string, { use: Use; cost: number }>();
  for (const { use, cost } of all) {
    const read: Use = {
      groundStitches: reads.ground ? use.groundStitches : 0,
      cordStitches: reads.cord ? use.cordStitches : 0,
      cords: reads.cord ? use.cords : 0,
    };
    const key = `${read.groundStitches} ${read.cordStitches} ${read.cords}`;
    const known = least.get(key);
    if (!known || cost < known.cost) least.set(key, { use: read, cost });
  }
  return least;
}

function* pairs(one: CostByUse, other: CostByUse): Generator<{ use: Use; cost: number }> {
  for (const a of one.values())
    for (const b of other.values())
      yield {
        use: {
          groundStitches: a.use.groundStitches + b.use.groundStitches,
          cordStitches: a.use.cordStitches + b.use.cordStitches,
          cords: a.use.cords + b.use.cords,
        },
        cost: a.cost + b.cost,
      };
}

const sums = (one: CostByUse, other: CostByUse, reads: Reads): CostByUse => costs(pairs(one, other), reads);

/** Placements that have a motif or a piece in common, directly or by way of others. */
function groupsOf(garment: GarmentFile): readonly (readonly PlacementEntry[])[] {
  let groups: (readonly PlacementEntry[])[] = [];
  for (const placement of garment.place) {
    const related = groups.filter((group) =>
      group.some(({ motif, on }) => motif === placement.motif || on === placement.on),
    );
    groups = [...groups.filter((group) => !related.includes(group)), [...related.flat(), placement]];
  }
  return groups;
}

function ofGroup(
  garment: GarmentFile,
  group: readonly PlacementEntry[],
  edges: Edges,
  stitches: KnittedStitches,
  reads: Reads,
): CostByUse {
  const cloth = clothOf(garment);
  const motifs = [...new Set(group.map(({ motif }) => motif))];
  const pieces = [...new Set(group.map(({ on }) => on))];
  const laid = rememberedLayings(garment, cloth, edges);
  const found: { use: Use; cost: number }[] = [];
  for (const looks of everyLook(garment, cloth, motifs)) {
    let all: CostByUse = costs(
      [{ use: nothing, cost: Object.values(looks).reduce((sum, { cost }) => sum + cost, 0) }],
      reads,
    );
    for (const piece of pieces) {
      const placements = group.filter(({ on }) => on === piece);
      all = sums(
        all,
        costs(
          [...laid(placements, looks)].map((laying) => ({
            use: useOf(garment, piece, laying, placements, looks, stitches),
            cost: laying.layouts.reduce((sum, { cost }) => sum + cost, 0),
          })),
          reads,
        ),
        reads,
      );
    }
    found.push(...all.values());
  }
  return costs(found, reads);
}

function* everyLook(
  garment: GarmentFile,
  cloth: Cloth,
  [name, ...others]: readonly string[],
): Generator<Record<string, Look>> {
  if (name === undefined) {
    yield {};
    return;
  }
  for (const look of looksOf(garment.motifs[name]!, cloth, garment.weights ?? {}))
    for (const rest of everyLook(garment, cloth, others)) yield { [name]: look, ...rest };
}

/** All placements of a piece, laid; one layout for each of them. */
interface Laying {
  readonly layouts: readonly Layout[];
  readonly stretches: readonly Stretch[];
}

// Looks that differ only in their pickups lie in the same ways.
function rememberedLayings(
  garment: GarmentFile,
  cloth: Cloth,
  edges: Edges,
): (placements: readonly PlacementEntry[], looks: Readonly<Record<string, Look>>) => readonly Laying[] {
  const known = new Map<string, readonly Laying[]>();
  return (placements, looks) => {
    const key = JSON.stringify(placements.map(({ motif, on }) => [on, motif, looks[motif]!.quantities]));
    if (!known.has(key)) known.set(key, [...layingsOf(garment, cloth, placements, looks, edges)]);
    return known.get(key)!;
  };
}

function* layingsOf(
  garment: GarmentFile,
  cloth: Cloth,
  [first, second, third]: readonly PlacementEntry[],
  looks: Readonly<Record<string, Look>>,
  edges: Edges,
): Generator<Laying> {
  if (third) throw new Error(`more than two placements on "${third.on}"`);
  const changes = lengthChanges(garment, cloth, first!.on);
  const field = fieldOf(garment, cloth, first!);
  if (!second) {
    for (const change of changes) {
      const stretched = { ...field, change };
      const layouts = layoutsOf(garment, cloth, first!, looks[first!.motif]!, edges, stretched);
      for (const layout of cheapestAlike([...layouts])) yield { layouts: [layout], stretches: [stretched] };
    }
    return;
  }
  const above = fieldOf(garment, cloth, second);
  if (above.from < field.to) throw new Error(`fields on "${first!.on}" overlap`);
  for (const own of changes)
    for (const other of changes) {
      if (!changes.includes(own + other)) continue;
      const [low, high] = [
        { ...field, change: own },
        { ...above, change: other },
      ];
      const lower = cheapestAlike([
        ...layoutsOf(garment, cloth, first!, looks[first!.motif]!, edges, low, [high]),
      ]);
      const upper = cheapestAlike([
        ...layoutsOf(garment, cloth, second, looks[second.motif]!, edges, high, [low]),
      ]);
      for (const one of lower)
        for (const two of upper)
          if (one.lastRow < two.firstRow) yield { layouts: [one, two], stretches: [low, high] };
    }
}

/** Layouts with so many repeats and columns take the same; where the rows that they lie on do not matter, neither do they. */
function cheapestAlike(layouts: readonly Layout[]): readonly Layout[] {
  const alike = new Map<string, Layout>();
  for (const layout of layouts) {
    const key = [layout.repeats, layout.columns, layout.firstRow, layout.lastRow].join();
    if (layout.cost < (alike.get(key)?.cost ?? Number.POSITIVE_INFINITY)) alike.set(key, layout);
  }
  return [...alike.values()];
}

function useOf(
  garment: GarmentFile,
  piece: string,
  { layouts, stretches }: Laying,
  placements: readonly PlacementEntry[],
  looks: Readonly<Record<string, Look>>,
  stitches: KnittedStitches,
): Use {
  const times = timesMade(garment, piece);
  let [cordStitches, cords, drawnIn] = [0, 0, 0];
  for (const [index, { repeats, columns }] of layouts.entries()) {
    const { motif } = placements[index]!;
    const each = cordOfColumn(garment.motifs[motif]!, looks[motif]!, repeats);
    cordStitches += columns * each.cordStitches;
    cords += columns * each.cords;
    drawnIn += columns * looks[motif]!.drawnIn;
  }
  return {
    groundStitches: times * stitches(piece, stretches, Math.round(drawnIn / 2)),
    cordStitches: times * cordStitches,
    cords: times * cords,
  };
}
