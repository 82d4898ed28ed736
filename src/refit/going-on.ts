import { cordStitchMm, groundStitch } from "../cloth/gauge.ts";
import type { FittedLook } from "../fit/fit.ts";
import { countings, type FittedSegment, type Look, looksOf, makeLook, valuesOf } from "../fit/looks.ts";
import type { CountLimits } from "../fit/steady/counts.ts";
import type { Gauge, Weights } from "../garment/garment.ts";
import { joiningSegments } from "../motif/joins.ts";
import { keepsEase } from "../motif/keeps-ease.ts";
import type { Motif } from "../motif/motif.ts";
import { easeOf, spanMm } from "../motif/path-length.ts";
import { pointsOver } from "../motif/sections.ts";
import { distinctSegments, type Segment, segmentKey } from "../motif/segments.ts";
import { across, type BlockTrace, type Trace } from "../motif/trace.ts";
import { isProblem, traceMotif } from "../motif/trace-motif.ts";
import type { Standing } from "./standing.ts";

/** What the looks of a motif have to go by on a piece that is begun. */
export interface Circumstances {
  readonly gauge: Gauge;
  readonly weights: Weights;
  readonly limits: CountLimits;
}

/** A look for what is left of a motif; the finishing one adds nothing to what is begun. */
export interface OpenLook {
  readonly look: Look;
  readonly finishing: boolean;
}

/**
 * The looks that a motif can be gone on with on a piece.
 *
 * @param now the look it is worked with so far
 * @param standing its placements that are begun
 * @param fresh whether some placement of it is still to begin
 */
export function openLooks(
  motif: Motif,
  now: FittedLook,
  standing: readonly Standing[],
  fresh: boolean,
  circumstances: Circumstances,
): readonly OpenLook[] {
  const { gauge, weights, limits } = circumstances;
  const first = standing[0]?.sections[0]?.look;
  if (fresh || !first)
    return looksOf(motif, gauge, weights, 1, limits).map((look) => ({ look, finishing: false }));
  const made = madeOnce(first, gauge);
  const begun = standing.filter(({ done }) => !done);
  const finishing = makeLook(motif, now.values, now.trace, atGauge(now.segments, gauge), weights);
  return [
    { look: finishing, finishing: true },
    ...valuesOf(motif).flatMap((values): OpenLook[] => {
      const trace = traceMotif(motif, values);
      if (isProblem(trace) || !begun.some((one) => canFollow(one, trace))) return [];
      const counts = motif.kind === "cord" ? countings(motif, repeatSegments(trace), gauge, 1, limits) : [[]];
      return counts.map((segments) => ({
        look: makeLook(motif, values, trace, [...made, ...segments], weights),
        finishing: false,
      }));
    }),
  ];
}

/** Whether each strand stands where a look's repeat takes it up, and stitches that cross are the same ones. */
export function canFollow({ sections }: Standing, above: Trace): boolean {
  const below = sections.at(-1)!.look.trace;
  const places = (trace: Trace): string =>
    JSON.stringify([
      trace.strands.map((strand) => [strand.name, strand.next, beginningOf(strand)]),
      trace.cables.map((cable) => [cable.name, cable.next, beginningOf(cable), cable.left, cable.right]),
      trace.ladders,
      trace.strands.length > 0 || trace.reach,
    ]);
  return places(below) === places(above);
}

const beginningOf = ({ start, leadIn }: BlockTrace): number => (leadIn.at(-1) ?? start).needle;

/**
 * Counts of the stretches that lead a standing motif over to another look, each nearest to the preferred ease.
 *
 * @returns undefined where one of them has no count with its ease in limits
 */
export function joinsTo(
  { sections }: Standing,
  look: Look,
  { gauge, limits }: Circumstances,
): readonly FittedSegment[] | undefined {
  const { motif, trace } = look;
  if (motif.kind !== "cord") return [];
  const counted = new Set(repeatSegments(trace).map(keyOf));
  const { look: below, repeats } = sections.at(-1)!;
  const joins = joiningSegments(below.trace, trace, repeats > 0 ? 1 : 0).filter(
    (join) => !counted.has(keyOf(join)),
  );
  return countings(motif, joins, gauge, 1, limits)[0];
}

/** Segments of the repeat in hand that go beyond the motif's limits of ease at a gauge; they are finished as begun. */
export function strainedSegments({ sections }: Standing, gauge: Gauge): readonly FittedSegment[] {
  const { look } = sections.at(-1)!;
  const { motif, trace, segments } = look;
  if (motif.kind !== "cord") return [];
  const repeated = new Set(repeatSegments(trace).map(keyOf));
  return atGauge(segments, gauge).filter(
    (segment) =>
      repeated.has(keyOf(segment)) &&
      segment.fixed === undefined &&
      !keepsEase({ least: segment.ease, most: segment.ease }, motif.ease),
  );
}

/** The distinct segments from one hanging of a repeat to the next, and over to the repeat after it. */
function repeatSegments(trace: Trace): readonly Segment[] {
  const worked = new Set(
    trace.strands.flatMap(({ name, leadIn }) => {
      const points = pointsOver([{ trace, repeats: 2 }], "strands", name).slice(leadIn.length + 1);
      return points.slice(1).map((to, index) => {
        const from = points[index]!;
        return segmentKey(across(from, to), to.row - from.row, to.count);
      });
    }),
  );
  return distinctSegments(trace).filter((segment) => worked.has(keyOf(segment)));
}

/** What only the lead-in has: it is made, and its counts stand whatever the gauge. */
function madeOnce(first: FittedLook, gauge: Gauge): readonly FittedSegment[] {
  const repeated = new Set(repeatSegments(first.trace).map(keyOf));
  return atGauge(
    first.segments.filter((segment) => !repeated.has(keyOf(segment))),
    gauge,
  );
}

const keyOf = ({ needles, rows, fixed }: Segment): string => segmentKey(needles, rows, fixed);

/** The same counts with their ease at another gauge. */
function atGauge(segments: readonly FittedSegment[], gauge: Gauge): readonly FittedSegment[] {
  const { cord } = gauge;
  if (!cord) return segments;
  return segments.map((segment) => {
    const span = spanMm(segment, groundStitch(gauge), cord.thicknessMm);
    return { ...segment, spanMm: span, ease: easeOf(segment.pickup, cordStitchMm(cord), span) };
  });
}
