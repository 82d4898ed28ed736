import type { Gauge, Weights } from "../../garment/garment.ts";
import type { GrowingQuantity } from "../../motif/growing-quantity.ts";
import { joiningSegments } from "../../motif/joins.ts";
import type { CordMotif, Quantity } from "../../motif/motif.ts";
import { segmentKey } from "../../motif/segments.ts";
import { type Footing, footingKey } from "../footing.ts";
import { countings, type FittedSegment, type Look, looksOf, meanEaseAway } from "../looks.ts";
import type { CountLimits } from "../steady/counts.ts";
import { awayFrom, costOf } from "../terms.ts";

/**
 * A growing motif while everything but the quantity that may change is settled: the looks it may have from repeat to
 * repeat, and what it takes to go from one to the next.
 */
export interface Track {
  readonly motif: CordMotif;
  readonly quantity: GrowingQuantity;
  readonly footing: Footing;
  /** What the settled quantities give up; it stands for the whole track among the motif's looks. */
  readonly settled: Look;
  /** By rising value of the quantity; all have the same rows. */
  readonly looks: readonly Look[];
  /** What it takes to go on with a look after another, or after itself; undefined where that cannot be worked. */
  readonly stepTo: (to: Look, from: Look) => Step | undefined;
}

/** One repeat and how it is come to. */
export interface Step {
  /** Counts of the stretches from the repeat below, as far as the look has none for them. */
  readonly joins: readonly FittedSegment[];
  /** Percentage points of ease away from the preferred one, the mean over the repeat's distinct segments. */
  readonly easeAway: number;
  /** How far the quantity is from the preferred value. */
  readonly away: number;
}

/** The tracks of a growing motif; of the ways to count the cord only the one nearest to the preferred ease. */
export function tracksOf(
  motif: CordMotif,
  quantity: GrowingQuantity,
  gauge: Gauge,
  weights: Weights,
  limits: CountLimits,
): readonly Track[] {
  const tracks = new Map<string, Look[]>();
  for (const look of looksOf(motif, gauge, weights, 1, limits)) {
    const key = footingKey(footingWithout(look, quantity));
    tracks.set(key, [...(tracks.get(key) ?? []), look]);
  }
  return [...tracks.values()].map((looks): Track => {
    const footing = footingWithout(looks[0]!, quantity);
    return {
      motif,
      quantity,
      footing,
      settled: settledLook(looks[0]!, quantity, footing),
      looks,
      stepTo: stepsAmong(motif, quantity, gauge, limits),
    };
  });
}

/** Looks that differ in the growing quantity alone, and have the same rows, stand on one footing. */
function footingWithout({ trace, values }: Look, quantity: Quantity): Footing {
  const others = [...values].filter(([name]) => name !== quantity.name);
  return {
    leadRows: trace.leadRows,
    repeatRows: trace.repeatRows,
    reach: { left: 0, right: 0 },
    crossedStitches: 0,
    goingOn: ` track of ${others.map(([name, value]) => `${name} ${value}`).join(", ")}`,
  };
}

function settledLook(look: Look, quantity: Quantity, footing: Footing): Look {
  const terms = look.terms.filter(({ term }) => term !== quantity.name && term !== "ease");
  return { ...look, footing, terms, cost: costOf(terms) };
}

function stepsAmong(
  motif: CordMotif,
  quantity: GrowingQuantity,
  gauge: Gauge,
  limits: CountLimits,
): Track["stepTo"] {
  const known = new Map<Look, Map<Look, Step | undefined>>();
  return (to, from) => {
    const fromHere = known.get(from) ?? new Map<Look, Step | undefined>();
    known.set(from, fromHere);
    if (!fromHere.has(to)) fromHere.set(to, step(to, from));
    return fromHere.get(to);
  };

  function step(to: Look, from: Look): Step | undefined {
    const value = to.values.get(quantity.name)!;
    if (Math.abs(from.values.get(quantity.name)! - value) > quantity.change) return undefined;
    const joins = joinsInto(to, from);
    if (!joins) return undefined;
    return {
      joins,
      easeAway: meanEaseAway([...to.segments, ...joins], motif.ease),
      away: awayFrom(quantity, value),
    };
  }

  function joinsInto(to: Look, from: Look): readonly FittedSegment[] | undefined {
    const counted = new Set(to.segments.map(({ needles, rows, fixed }) => segmentKey(needles, rows, fixed)));
    const joins = joiningSegments(from.trace, to.trace).filter(
      ({ needles, rows, fixed }) => !counted.has(segmentKey(needles, rows, fixed)),
    );
    return countings(motif, joins, gauge, 1, limits)[0];
  }
}
