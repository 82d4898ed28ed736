import type { GarmentFile, MatchEntry, PlacementEntry } from "./garment-file.ts";
import { type Cloth, clothOf, holdsLength, markRow, type Stretch, stretchedRow } from "./referee/cloth.ts";
import { type Edges, fieldOf, type Layout, layoutsOf, lengthChanges, rowsInto } from "./referee/layouts.ts";
import { type Look, looksOf } from "./referee/looks.ts";
import { bestOfTwo, type PieceFit } from "./referee/two-on-a-piece.ts";
import { keepsLoops, wearerRules } from "./referee/wearer.ts";

/** One of the cheapest fits; where several tie, the first one met. */
export interface ExhaustiveFit {
  readonly cost: number;
  readonly looks: Readonly<Record<string, Look>>;
  /** In the order of the garment's `place`. */
  readonly layouts: readonly Layout[];
}

export interface ExhaustiveOptions {
  /** Edges to measure the side margins against; without them, the outline's own, evenly stepped. */
  readonly edges?: Edges;
  /** Any fit will do, and the search ends with the first; how its cord is counted, and so its cost, is left open. */
  readonly anyFit?: boolean;
}

/**
 * The cheapest fit of a garment by trying every look of every motif and, under it, every layout of every
 * placement; undefined where none fits. What a pickup costs is kept apart from where a motif lies only in that
 * costs add up, nothing is left out because something else looks better.
 *
 * Throws where the garment is not one it can judge: a cord with a thickness, an anchor that is no needle, more
 * than two placements on one piece, or two whose fields overlap without being the same.
 */
export function exhaustiveBest(
  garment: GarmentFile,
  options: ExhaustiveOptions = {},
): ExhaustiveFit | undefined {
  if (garment.place.some(wearerRules(garment).forbids)) return undefined;
  const cloth = clothOf(garment);
  const isPlain = (name: string): boolean => !garment.place.some(({ on }) => on === name);
  for (const [name, piece] of Object.entries(garment.pieces))
    if (isPlain(name) && !holdsLength(piece, markRow(piece, "bind-off", cloth), cloth)) return undefined;
  const looks: Record<string, Look> = {};
  const layouts = new Map<PlacementEntry, Layout>();
  let cost = 0;
  for (const group of groupsOf(garment)) {
    const best = bestOfGroup(garment, cloth, group, options);
    if (!best) return undefined;
    cost += best.cost;
    Object.assign(looks, best.looks);
    for (const [placement, layout] of best.layouts) layouts.set(placement, layout);
  }
  return { cost, looks, layouts: garment.place.map((placement) => layouts.get(placement)!) };
}

interface Group {
  readonly motifs: ReadonlySet<string>;
  readonly pieces: ReadonlySet<string>;
  readonly placements: readonly PlacementEntry[];
}

/** Placements that have to do with one another: the same motif or the same piece, directly or by way of others. */
function groupsOf(garment: GarmentFile): Group[] {
  let groups: Group[] = [];
  for (const placement of garment.place) {
    const related = groups.filter(
      ({ motifs, pieces }) => motifs.has(placement.motif) || pieces.has(placement.on),
    );
    groups = [
      ...groups.filter((group) => !related.includes(group)),
      {
        motifs: new Set([placement.motif, ...related.flatMap(({ motifs }) => [...motifs])]),
        pieces: new Set([placement.on, ...related.flatMap(({ pieces }) => [...pieces])]),
        placements: [...related.flatMap(({ placements }) => placements), placement],
      },
    ];
  }
  return groups;
}

interface GroupFit extends PieceFit {
  readonly looks: Readonly<Record<string, Look>>;
}

function bestOfGroup(
  garment: GarmentFile,
  cloth: Cloth,
  group: Group,
  options: ExhaustiveOptions,
): GroupFit | undefined {
  let best: GroupFit | undefined;
  const bestOfPiece = rememberingPieces(garment, cloth, group, options);
  for (const looks of everyLookOf(garment, cloth, [...group.motifs], options)) {
    if (options.anyFit && best) break;
    for (const phase of phasesOf(garment, group, looks)) {
      let cost = Object.values(looks).reduce((total, look) => total + look.cost, 0);
      const layouts = new Map<PlacementEntry, Layout>();
      for (const piece of group.pieces) {
        const found = bestOfPiece(piece, looks, phase);
        cost += found?.cost ?? Number.POSITIVE_INFINITY;
        for (const [placement, layout] of found?.layouts ?? []) layouts.set(placement, layout);
      }
      if (cost < (best?.cost ?? Number.POSITIVE_INFINITY)) best = { cost, looks, layouts };
    }
  }
  return best;
}

/** How far the matched placements of a group are in their repeat at the mark, all alike. */
interface MatchedPhase extends MatchEntry {
  readonly rows: number;
}

/** Every phase that a group's match may come out at; the one and only "none" where it has no match. */
function phasesOf(
  garment: GarmentFile,
  group: Group,
  looks: Readonly<Record<string, Look>>,
): readonly (MatchedPhase | undefined)[] {
  const [match, second] = (garment.match ?? []).filter(({ motif }) => group.motifs.has(motif));
  if (!match) return [undefined];
  if (second) throw new Error("more than one match for the same placements");
  return Array.from({ length: looks[match.motif]!.repeatRows }, (_, rows) => ({ ...match, rows }));
}

function* everyLookOf(
  garment: GarmentFile,
  cloth: Cloth,
  motifs: readonly string[],
  options: ExhaustiveOptions,
): Generator<Record<string, Look>> {
  const [name, ...others] = motifs;
  if (name === undefined) {
    yield {};
    return;
  }
  const { limitsLoops } = wearerRules(garment);
  const shortLoops = garment.place.some((placement) => placement.motif === name && limitsLoops(placement));
  for (const look of looksOf(garment.motifs[name]!, cloth, garment.weights ?? {}, options.anyFit)) {
    if (shortLoops && !keepsLoops(look, cloth)) continue;
    for (const rest of everyLookOf(garment, cloth, others, options)) yield { [name]: look, ...rest };
  }
}

type BestOfPiece = (
  piece: string,
  looks: Readonly<Record<string, Look>>,
  phase: MatchedPhase | undefined,
) => PieceFit | undefined;

// Looks that differ only in their pickups lie on a piece in the same ways, which need no second search.
function rememberingPieces(
  garment: GarmentFile,
  cloth: Cloth,
  group: Group,
  options: ExhaustiveOptions,
): BestOfPiece {
  const known = new Map<string, PieceFit | undefined>();
  return (piece, looks, matched) => {
    const placements = group.placements.filter((placement) => placement.on === piece);
    const phase = matched?.on.includes(piece) ? matched : undefined;
    const key = JSON.stringify([piece, phase, placements.map(({ motif }) => looks[motif]!.quantities)]);
    if (!known.has(key)) known.set(key, bestOfPlacements(garment, cloth, placements, looks, options, phase));
    return known.get(key);
  };
}

function bestOfPlacements(
  garment: GarmentFile,
  cloth: Cloth,
  placements: readonly PlacementEntry[],
  looks: Readonly<Record<string, Look>>,
  { edges, anyFit = false }: ExhaustiveOptions,
  phase: MatchedPhase | undefined,
): PieceFit | undefined {
  const [first, second, third] = placements;
  if (!first) return undefined;
  if (third) throw new Error(`more than two placements on "${first.on}"`);
  if (second && phase) throw new Error(`a match on "${first.on}", which carries two placements`);
  if (second) return bestOfTwo(garment, cloth, [first, second], looks, edges);
  const field = fieldOf(garment, cloth, first);
  const markOf = (mark: string, stretch: Stretch): number =>
    stretchedRow(markRow(garment.pieces[first.on]!, mark, cloth), [stretch]);
  let best: Layout | undefined;
  for (const change of lengthChanges(garment, cloth, first.on)) {
    const stretched = { ...field, change };
    const look = looks[first.motif]!;
    for (const layout of layoutsOf(garment, cloth, first, look, edges, stretched)) {
      if (phase && rowsInto(look, layout.firstRow, markOf(phase.mark, stretched)) !== phase.rows) continue;
      if (layout.cost < (best?.cost ?? Number.POSITIVE_INFINITY)) best = layout;
      if (anyFit) break;
    }
    if (anyFit && best) break;
  }
  return best && { cost: best.cost, layouts: new Map([[first, best]]) };
}
