import { cordStitchMm, groundStitch } from "../cloth/gauge.ts";
import { valuesUpTo } from "../garment/allowed.ts";
import type { Gauge, Weights } from "../garment/garment.ts";
import { keepsEase } from "../motif/keeps-ease.ts";
import type { CordMotif, EaseLimits, Motif, Quantity } from "../motif/motif.ts";
import { easeOf, spanMm } from "../motif/path-length.ts";
import { keepsRules } from "../motif/rules.ts";
import { distinctSegments, type Segment } from "../motif/segments.ts";
import type { Trace, Values } from "../motif/trace.ts";
import { isProblem, traceMotif } from "../motif/trace-motif.ts";
import { goOn, hold } from "./allowance.ts";
import type { Footing } from "./footing.ts";
import { keepsLoop, loopMm } from "./loop.ts";
import { type CountLimits, keepsOver } from "./steady/counts.ts";
import { awayFrom, costOf, makeTerm, type Term } from "./terms.ts";

/** One way a motif can look: a value for each quantity and, for a cord, a pickup for each distinct segment. */
export interface Look {
  readonly motif: Motif;
  readonly values: Values;
  readonly trace: Trace;
  readonly segments: readonly FittedSegment[];
  readonly terms: readonly Term[];
  readonly cost: number;
  /** What layouts under it stand on, where that is not its trace's alone. */
  readonly footing?: Footing;
}

export interface FittedSegment extends Segment {
  readonly spanMm: number;
  /** Cord stitches counted along the strand over this segment. */
  readonly pickup: number;
  /** Fraction; see `easeOf`. */
  readonly ease: number;
}

/** Some of the ways to count the first segments of a cord, each with how far its ease is from the preferred one. */
type SomeWays = (
  ways: readonly (readonly FittedSegment[])[],
  keep: number,
  away: (way: readonly FittedSegment[]) => number,
) => readonly (readonly FittedSegment[])[];

/** Which ways to count a cord are kept for one set of quantities, where more is read of them than their ease. */
export type KeepWays = (trace: Trace) => SomeWays;

/**
 * The looks of a motif, cheapest first among those with the same quantities.
 *
 * @param keep ways to count the cord that are kept for one set of quantities: so many fits that differ may differ in
 *   the counts alone, and never need one more
 * @param keepWays which of them; those nearest to the preferred ease unless it is given
 */
export function looksOf(
  motif: Motif,
  gauge: Gauge,
  weights: Weights,
  keep: number,
  limits: CountLimits = {},
  keepWays?: KeepWays,
): readonly Look[] {
  return valuesOf(motif).flatMap((values) => {
    goOn();
    const trace = traceMotif(motif, values);
    return isProblem(trace) ? [] : looksWith(motif, values, trace, gauge, weights, keep, limits, keepWays);
  });
}

/** Every combination of allowed values that keeps the motif's rules. */
export function valuesOf(motif: Motif): readonly Values[] {
  let combinations: Map<string, number>[] = [new Map()];
  for (const quantity of motif.quantities)
    combinations = combinations.flatMap((values) =>
      allowedValues(quantity).map((value) => new Map(values).set(quantity.name, value)),
    );
  return combinations.filter((values) => keepsRules(motif.rules, values));
}

/** Needles or rows beyond which an open range of a quantity is not followed: wider than any bed, longer than any motif. */
const quantityCeiling = 400;

export const allowedValues = (quantity: Quantity): readonly number[] =>
  valuesUpTo(quantity.allowed, quantity.allowed.kind === "list" ? Number.POSITIVE_INFINITY : quantityCeiling);

function looksWith(
  motif: Motif,
  values: Values,
  trace: Trace,
  gauge: Gauge,
  weights: Weights,
  keep: number,
  limits: CountLimits,
  keepWays: KeepWays | undefined,
): readonly Look[] {
  const counted =
    motif.kind === "cord"
      ? countings(motif, distinctSegments(trace), gauge, keep, limits, keepWays?.(trace))
      : [[]];
  hold(counted.length);
  return counted.map((segments) => makeLook(motif, values, trace, segments, weights));
}

/** A look with its cord counted so, and what it gives up. */
export function makeLook(
  motif: Motif,
  values: Values,
  trace: Trace,
  segments: readonly FittedSegment[],
  weights: Weights,
): Look {
  const owner = { motif: motif.name };
  const eased = motif.kind === "cord" ? meanEaseAway(segments, motif.ease) : 0;
  const terms = [
    makeTerm("ease", eased, "percentage points", weights, owner),
    ...motif.quantities.map((quantity) =>
      makeTerm(quantity.name, awayFrom(quantity, values.get(quantity.name)!), quantity.unit, weights, owner),
    ),
  ].filter(({ amount }) => amount > 0);
  return { motif, values, trace, segments, terms, cost: costOf(terms) };
}

/**
 * Mean over the distinct segments of how far the ease is from the preferred one, in percentage points. Loops are left
 * out: how long they are is the knitter's own choice.
 */
export function meanEaseAway(segments: readonly FittedSegment[], { prefer }: EaseLimits): number {
  const eased = segments.filter(({ fixed }) => fixed === undefined);
  if (prefer === undefined || eased.length === 0) return 0;
  const away = eased.reduce((sum, { ease }) => sum + Math.abs(ease - prefer), 0);
  return (100 * away) / eased.length;
}

/** The ways to count the cord with the ease inside its limits, nearest to the preferred ease first. */
export function countings(
  motif: CordMotif,
  distinct: readonly Segment[],
  gauge: Gauge,
  keep: number,
  limits: CountLimits,
  someWays: SomeWays = nearest,
): readonly (readonly FittedSegment[])[] {
  const cord = gauge.cord;
  if (!cord) return [];
  const stitch = groundStitch(gauge);
  const { mostLoopMm, over } = limits;
  const away = (segments: readonly FittedSegment[]): number => meanEaseAway(segments, motif.ease);
  let ways: readonly (readonly FittedSegment[])[] = [[]];
  for (const segment of distinct) {
    const span = spanMm(segment, stitch, cord.thicknessMm);
    const counts =
      segment.fixed === undefined
        ? pickupsFor(span, cordStitchMm(cord), motif.ease)
        : [{ pickup: segment.fixed, ease: easeOf(segment.fixed, cordStitchMm(cord), span) }];
    const fitted = counts
      .map((one) => ({ ...segment, spanMm: span, ...one }))
      .filter((one) => keepsLoop(loopMm(one, stitch, cordStitchMm(cord)), mostLoopMm))
      .filter((one) => !over || keepsOver(one, motif.ease, over, limits, cord.thicknessMm));
    // Every segment adds to the mean on its own, so the best few of the whole are made of the best few so far.
    ways = someWays(
      ways.flatMap((way) => fitted.map((one) => [...way, one])),
      keep,
      away,
    );
  }
  return ways;
}

const nearest: SomeWays = (ways, keep, away) => [...ways].sort((a, b) => away(a) - away(b)).slice(0, keep);

/** Every whole number of cord stitches over a span whose ease keeps its limits. */
export function pickupsFor(
  span: number,
  cordStitch: number,
  limits: EaseLimits,
): readonly { pickup: number; ease: number }[] {
  const least = Math.max(1, Math.floor(((1 + limits.from) * span) / cordStitch));
  const most = Math.ceil(((1 + limits.to) * span) / cordStitch);
  const fitting: { pickup: number; ease: number }[] = [];
  for (let pickup = least; pickup <= most; pickup++) {
    const ease = easeOf(pickup, cordStitch, span);
    if (keepsEase({ least: ease, most: ease }, limits)) fitting.push({ pickup, ease });
  }
  return fitting;
}
