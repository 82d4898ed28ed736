import { position } from "../cloth/bed.ts";
import { pointsOver } from "./sections.ts";
import { across, type Point, type StrandTrace, type Trace } from "./trace.ts";

/** A stretch of cord between two hangings that all stretches of the same size share. */
export interface Segment {
  readonly name: string;
  readonly needles: number;
  readonly rows: number;
  /** How many strands such a stretch passes over, where it passes over most. */
  readonly climbs: number;
}

/**
 * The distinct segments of a cord motif, by needles across and rows up, in the order in which they are first
 * worked. Two repeats are walked, because the first segment of the second repeat may differ from all others.
 */
export function distinctSegments(trace: Trace): readonly Segment[] {
  const found = new Map<string, Segment>();
  const walks = trace.strands.map((strand) => pointsOver([{ trace, repeats: 2 }], () => strand));
  trace.strands.forEach((strand, index) => {
    const under = walks.slice(0, index);
    segmentsOf(walks[index]!).forEach(([from, to], step) => {
      const needles = across(from, to);
      const rows = to.row - from.row;
      const key = segmentKey(needles, rows);
      const climbs = under.filter((walk) =>
        segmentsOf(walk).some((other) => crosses(other, [from, to])),
      ).length;
      const known = found.get(key);
      found.set(key, {
        name: known?.name ?? nameOf(strand, step, from, to),
        needles,
        rows,
        climbs: Math.max(climbs, known?.climbs ?? 0),
      });
    });
  });
  return numberAlike([...found.values()]);
}

export const segmentKey = (needles: number, rows: number): string => `${needles}x${rows}`;

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
