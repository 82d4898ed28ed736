import { position } from "../cloth/bed.ts";
import { pointsOver } from "./sections.ts";
import { across, liesOver, type Point, type StrandTrace, type Trace } from "./trace.ts";

/** A stretch of cord between two hangings that all stretches of the same size share. */
export interface Segment {
  readonly name: string;
  readonly needles: number;
  readonly rows: number;
  /** How many strands such a stretch passes over, where it passes over most. */
  readonly climbs: number;
  /** Cord stitches of a standing loop: counted so whatever the ease. */
  readonly fixed?: number;
}

/**
 * The distinct segments of a cord motif, by needles across and rows up, in the order in which they are first
 * worked. Two repeats are walked, because the first segment of the second repeat may differ from all others.
 */
export function distinctSegments(trace: Trace): readonly Segment[] {
  const found = new Map<string, Segment>();
  const walks = trace.strands.map(({ name }) =>
    segmentsOf(pointsOver([{ trace, repeats: 2 }], "strands", name)),
  );
  trace.strands.forEach((strand, index) => {
    const others = walks.filter((_, other) => other !== index);
    walks[index]!.forEach(([from, to], step) => {
      const needles = across(from, to);
      const rows = to.row - from.row;
      const key = segmentKey(needles, rows, to.count);
      const climbs = others.filter((walk) =>
        walk.some((other) => crosses(other, [from, to]) && liesOver(to, other[1])),
      ).length;
      const known = found.get(key);
      found.set(key, {
        name: known?.name ?? nameOf(strand, step, from, to),
        needles,
        rows,
        climbs: Math.max(climbs, known?.climbs ?? 0),
        ...(to.count !== undefined && { fixed: to.count }),
      });
    });
  });
  return numberAlike([...found.values()]);
}

/** Stretches of one key are counted alike. */
export const segmentKey = (needles: number, rows: number, fixed?: number): string =>
  `${needles}x${rows}${fixed === undefined ? "" : `=${fixed}`}`;

type Stretch = readonly [from: Point, to: Point];

const segmentsOf = (points: readonly Point[]): Stretch[] =>
  points.slice(1).map((to, index) => [points[index]!, to]);

/** Whether two stretches of cord change sides of each other within the rows they share. */
export function crosses(one: Stretch, other: Stretch): boolean {
  const first = Math.max(one[0].row, other[0].row);
  const last = Math.min(one[1].row, other[1].row);
  if (first >= last) return false;
  const apart = (row: number): number => placeAt(one, row) - placeAt(other, row);
  return apart(first) * apart(last) < 0;
}

function placeAt([from, to]: Stretch, row: number): number {
  const done = (row - from.row) / (to.row - from.row);
  return position(from.needle) + done * (position(to.needle) - position(from.needle));
}

function nameOf(strand: StrandTrace, step: number, from: Point, to: Point): string {
  if (to.count !== undefined) return "loop";
  if (step < strand.leadIn.length) return "lead-in";
  return from.needle * to.needle < 0 ? "crossing" : "run";
}

/** "run", "run 2", "run 3": a name stands once. */
export function numberAlike(segments: readonly Segment[]): readonly Segment[] {
  const seen = new Map<string, number>();
  return segments.map((segment) => {
    const times = (seen.get(segment.name) ?? 0) + 1;
    seen.set(segment.name, times);
    return times === 1 ? segment : { ...segment, name: `${segment.name} ${times}` };
  });
}
