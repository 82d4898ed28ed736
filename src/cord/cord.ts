import type { CordMotif } from "../motif/motif.ts";
import { segmentKey } from "../motif/segments.ts";
import { across, pointsOver, type Trace } from "../motif/trace.ts";

/** One hanging of a strand; `count` is the cord stitches counted from the strand's hanging before (0 at its first). */
export interface Hanging {
  readonly strand: string;
  /** Needle from the column's centre. */
  readonly needle: number;
  /** Row from the motif's first row. */
  readonly row: number;
  readonly count: number;
}

/** One length of cord: a strand with two ends of its own, or two strands that are the arms of one folded cord. */
export interface Cord {
  readonly strands: readonly string[];
  /** Cord stitches from the first hung end to the last: all that are counted, and one hung at each strand's start. */
  readonly used: number;
}

/** Counted segments of a look, as much of them as the cord needs. */
export interface Counted {
  readonly trace: Trace;
  readonly segments: readonly { readonly needles: number; readonly rows: number; readonly pickup: number }[];
}

/** Every hanging of one column, strand by strand, from the bottom up. */
export function hangingsOf({ trace, segments }: Counted, repeats: number): readonly Hanging[] {
  const pickups = new Map(segments.map(({ needles, rows, pickup }) => [segmentKey(needles, rows), pickup]));
  return trace.strands.flatMap((strand) => {
    const points = pointsOver(strand, trace, repeats);
    return points.map((point, index): Hanging => {
      const before = points[index - 1];
      const count = before ? pickups.get(segmentKey(across(before, point), point.row - before.row))! : 0;
      return { strand: strand.name, needle: point.needle, row: point.row, count };
    });
  });
}

/** The cords of one column. */
export function cordsOf(motif: CordMotif, counted: Counted, repeats: number): readonly Cord[] {
  const hangings = hangingsOf(counted, repeats);
  const usedBy = (strands: readonly string[]): number =>
    hangings
      .filter(({ strand }) => strands.includes(strand))
      .reduce((sum, { count }) => sum + count, strands.length);
  const single = motif.strands
    .map(({ name }) => name)
    .filter((name) => !motif.folded.some((pair) => pair.includes(name)));
  return [...motif.folded, ...single.map((name) => [name])].map((strands) => ({
    strands,
    used: usedBy(strands),
  }));
}

/**
 * Cord stitches to make for so many used: the reserve is added and the sum rounded up, because spare cord is
 * unravelled and a cord that ends too early spoils the piece.
 *
 * @param reserve spare cord as a fraction of what is used
 */
export function stitchesToMake(used: number, reserve: number): number {
  // In tenths of a percent, so that 15 % of 100 is 15 and not a hair more.
  const perMille = Math.round(reserve * 1000);
  return Math.ceil((used * (1000 + perMille)) / 1000);
}

/** Each cord stitch takes two passes: one knits, one slips back. */
export const passesFor = (cordStitches: number): number => 2 * cordStitches;
