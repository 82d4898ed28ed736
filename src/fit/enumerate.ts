import { groundStitch } from "../cloth/gauge.ts";
import type { Garment } from "../garment/garment.ts";
import { growingQuantity } from "../motif/growing-quantity.ts";
import type { Motif } from "../motif/motif.ts";
import { isProblem, traceMotif } from "../motif/trace-motif.ts";
import { isForbidden } from "../safety/cord-rules.ts";
import { hold, within } from "./allowance.ts";
import { byCostThenPlainness } from "./candidates.ts";
import { type Field, fieldsOf, neighbours } from "./field.ts";
import { type Footing, footingKey, footingOf } from "./footing.ts";
import type { Choices } from "./formulate.ts";
import {
  createCandidatesByCord,
  growingCandidates,
  unsurpassedCandidates,
} from "./growth/growing-candidates.ts";
import { type Track, tracksOf } from "./growth/tracks.ts";
import type { Kept } from "./kept.ts";
import { createLayouts, type Layout } from "./layouts.ts";
import { type KeepWays, type Look, looksOf, valuesOf } from "./looks.ts";
import type { Measure } from "./measure.ts";
import { groundOfLayouts, layoutsByLength } from "./on-hand/ground.ts";
import { type SupplyMeasures, supplyMeasures } from "./on-hand/supply-measures.ts";
import { countLimits } from "./steady/counts.ts";
import { keepsPlainLengths } from "./steady/length.ts";

/** How much of what is possible is worked out. */
export interface Extent {
  /** Fits that must be told apart, the best one and its rivals together; 6 unless stated. */
  readonly fits?: number;
  /** No more than is needed to tell whether something fits at all. */
  readonly anyLayout?: boolean;
  /** Amounts that some rule, or a trade-off, reads beside the cost. */
  readonly measures?: readonly Measure[];
  /** Makes the looks of a motif that stays as it is, in the place of `looksOf`. */
  readonly looksOf?: LooksOf;
  /** What was worked out for an earlier state of the garment; looks by `looksOf` are not kept. */
  readonly kept?: Kept;
}

export type LooksOf = typeof looksOf;

const usualFits = 6;

/** Works out the looks of every motif that is placed, and the layouts of every placement under them. */
export const enumerate = (garment: Garment, extent: Extent = {}): Choices =>
  within(undefined, () => choicesOf(garment, extent));

function choicesOf(garment: Garment, extent: Extent): Choices {
  const { fits = usualFits, anyLayout = false, measures: asked = [], kept } = extent;
  const placed = placedMotifs(garment);
  const fields = fieldsOf(garment);
  const supplies = supplyMeasures(garment, garment.onHand, groundOfLayouts(fields));
  const measures = [...(supplies?.measures ?? []), ...asked];
  const tracks = new Map(placed.map((motif) => [motif.name, growingTracks(garment, motif)]));
  const looks = placed.map(
    (motif) =>
      tracks.get(motif.name)?.map(({ settled }) => settled) ??
      looksIn(garment, motif, fits, extent, supplies?.keepWays).map((look) => apartBy(measures, look)),
  );
  const motifs = new Map(placed.map((motif) => [motif.name, motif]));
  const losses = fields.map((field) => fixedLoss(field, motifs.get(field.placement.motif)!) ?? 0);
  const lostBeside = fields.map((field) =>
    neighbours(field, fields).reduce((sum, other) => sum + losses[other.index]!, 0),
  );
  const layoutsUnder = createLayouts({
    fields,
    stitch: groundStitch(garment.gauge),
    weights: garment.weights,
    bed: garment.bed,
    anyLayout,
    keep: fits,
    measures,
    lostPerColumn: (field, footing) => drawInOf(motifs.get(field.placement.motif)!) * footing.crossedStitches,
    lostBeside: (field) => lostBeside[field.index]!,
  });
  const footings = new Map(placed.map((motif, index) => [motif.name, footingsOf(looks[index]!)]));
  const pathsKept = anyLayout ? 1 : fits;
  const surroundings = JSON.stringify([
    groundStitch(garment.gauge),
    garment.weights,
    garment.bed,
    anyLayout,
    fits,
  ]);
  /** Layouts of one look all the way. */
  const plainLayouts = (field: Field, alike: readonly Footing[]): readonly Layout[] => {
    const footing = alike[0]!;
    const make = (): readonly Layout[] => layoutsUnder(field, footing, undefined, alike);
    if (!kept || measures.length > 0) return make();
    const drawIn = drawInOf(motifs.get(field.placement.motif)!);
    const of = [surroundings, field, neighbours(field, fields), lostBeside[field.index], drawIn, footing];
    return again(kept, `layouts ${JSON.stringify(of)}`, make).map((layout) => ({
      ...layout,
      field,
      footing,
    }));
  };
  const steadyElsewhere = keepsPlainLengths(garment);
  const layouts = fields.map((field): readonly Layout[] => {
    const { motif } = field.placement;
    if (!steadyElsewhere || isForbidden(garment, field.placement)) return [];
    const made =
      tracks.get(motif)?.flatMap((track) =>
        layoutsUnder(
          field,
          track.footing,
          supplies?.readsCord
            ? createCandidatesByCord(track, pathsKept, {
                lessIsBetter: supplies.lessIsBetter,
                everyTerm: asked.length > 0,
                anyCost: anyLayout,
              })
            : asked.length === 0
              ? (room) => growingCandidates(room, track, pathsKept)
              : (room) => unsurpassedCandidates(room, track),
        ),
      ) ?? footings.get(motif)!.flatMap((alike) => plainLayouts(field, alike));
    return made.sort(byCostThenPlainness);
  });
  const lostOn = (onPiece: readonly Field[]): number =>
    onPiece.reduce((sum, { index }) => sum + losses[index]!, 0);
  return {
    matches: garment.matches,
    measures,
    limits: supplies?.limits ?? [],
    looks: looks.map((ofMotif) => [...ofMotif].sort((a, b) => a.cost - b.cost)),
    layouts: supplies ? withSupplies(garment, fields, layouts, supplies, lostOn) : layouts,
  };
}

/** The looks of a motif that stays as it is. */
function looksIn(
  garment: Garment,
  motif: Motif,
  fits: number,
  { looksOf: looksFor = looksOf, kept }: Extent,
  keepWays: KeepWays | undefined,
): readonly Look[] {
  const { gauge, weights } = garment;
  const limits = countLimits(garment, motif.name);
  const make = (): readonly Look[] => looksFor(motif, gauge, weights, fits, limits, keepWays);
  if (!kept || looksFor !== looksOf || keepWays) return make();
  return again(kept, `looks ${JSON.stringify([motif, gauge, weights, fits, limits])}`, make).map((look) => ({
    ...look,
    motif,
  }));
}

/** What is kept takes as much of what may be held as what is made. */
function again<Item>(kept: Kept, of: string, make: () => readonly Item[]): readonly Item[] {
  let isMade = false;
  const list = kept(of, () => {
    isMade = true;
    return make();
  });
  if (!isMade) hold(list.length);
  return list;
}

/** Layouts that tell all that they take of what is on hand; the first placement's bear what taking nothing would cost. */
function withSupplies(
  garment: Garment,
  fields: readonly Field[],
  layouts: readonly (readonly Layout[])[],
  supplies: SupplyMeasures,
  lostOn: (onPiece: readonly Field[]) => number,
): readonly (readonly Layout[])[] {
  const told = supplies.readsGround ? layoutsByLength(garment, fields, layouts, supplies, lostOn) : layouts;
  return told.map((ofPlacement, index) =>
    index > 0
      ? ofPlacement
      : ofPlacement.map((layout) => ({ ...layout, cost: layout.cost + supplies.costOfAll })),
  );
}

/** The tracks of a motif that grows; undefined for one that does not. */
function growingTracks(garment: Garment, motif: Motif): readonly Track[] | undefined {
  const quantity = growingQuantity(motif);
  return motif.kind === "cord" && quantity
    ? tracksOf(motif, quantity, garment.gauge, garment.weights, countLimits(garment, motif.name))
    : undefined;
}

/** The motifs that some placement uses, in the order of the file. */
export const placedMotifs = (garment: Garment): readonly Motif[] =>
  garment.motifs.filter(({ name }) => garment.placements.some(({ motif }) => motif === name));

/** The footings of some looks, those together on which the same layouts can stand. */
function footingsOf(looks: readonly Look[]): readonly (readonly Footing[])[] {
  const alike = new Map<string, Map<string, Footing>>();
  for (const { trace, footing = footingOf(trace) } of looks) {
    const key = footingKey(footingOf(trace));
    alike.set(key, (alike.get(key) ?? new Map<string, Footing>()).set(footingKey(footing), footing));
  }
  return [...alike.values()].map((footings) => [...footings.values()]);
}

/** A look on a footing of its own, where a measure reads more of it than its footing tells. */
function apartBy(measures: readonly Measure[], look: Look): Look {
  const parts = new Set(measures.flatMap(({ lookPart }) => lookPart?.(look) || []));
  return parts.size === 0
    ? look
    : {
        ...look,
        footing: { ...footingOf(look.trace), goingOn: ` (${[...parts].join(", ")})`, counted: look },
      };
}

const drawInOf = (motif: Motif): number => (motif.kind === "cable" ? motif.drawIn : 0);

/**
 * Stitches' width a placement loses whatever is chosen for it: 0 for a motif that draws nothing in, undefined where
 * it depends on the choice.
 */
export function fixedLoss(field: Field, motif: Motif): number | undefined {
  if (motif.kind !== "cable" || motif.drawIn === 0) return 0;
  const crossed = new Set(
    valuesOf(motif).map((values) => {
      const trace = traceMotif(motif, values);
      return isProblem(trace) ? undefined : footingOf(trace).crossedStitches;
    }),
  );
  const [stitches] = crossed;
  const allowed = field.placement.columns.allowed;
  const fixed = allowed.kind === "list" && allowed.values.length === 1 ? allowed.values[0] : undefined;
  return crossed.size === 1 && stitches !== undefined && fixed !== undefined
    ? fixed * stitches * motif.drawIn
    : undefined;
}
