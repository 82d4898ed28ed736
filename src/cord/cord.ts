import { pointsOver } from "../motif/sections.ts";
import { segmentKey } from "../motif/segments.ts";
import { across, type Trace } from "../motif/trace.ts";

/** One hanging of a strand; `count` is the cord stitches counted from the strand's hanging before (0 at its first). */
export interface Hanging {
  readonly strand: string;
  /** Needle from the column's centre. */
  readonly needle: number;
  /** Row from the motif's first row. */
  readonly row: number;
  readonly count: number;
  /** Place in the order of work of its row. */
  readonly rank: number;
  /** Whether `count` is fixed, so that the stretch before stands off as a loop. */
  readonly loop: boolean;
  /** Whether it is the strand's last. */
  readonly last: boolean;
}

/** One length of cord: a strand with two ends of its own, or two strands that are the arms of one folded cord. */
export interface Cord {
  readonly strands: readonly string[];
  /** Cord stitches from the first hung end to the last: all that are counted, and one hung at each strand's start. */
  readonly used: number;
}

/** Whole repeats with one look, as much of them as the cord needs. */
export interface CountedSection {
  readonly look: { readonly trace: Trace; readonly segments: readonly CountedStretch[] };
  readonly repeats: number;
  /** Counts of the stretches that come from the section below, where the look has none for them. */
  readonly joins: readonly CountedStretch[];
}

interface CountedStretch {
  readonly needles: number;
  readonly rows: number;
  readonly pickup: number;
  readonly fixed?: number;
}

/** By strand: hangings of one repeat more, above the last whole one. */
export type HangingsMore = Readonly<Record<string, number>>;

/** Every hanging of one column, strand by strand, from the bottom up. */
export function hangingsOf(sections: readonly CountedSection[], more: HangingsMore = {}): readonly Hanging[] {
  const runs = sections.map(({ look: { trace }, repeats }) => ({ trace, repeats }));
  const pickups = sections.map(
    ({ look, joins }) =>
      new Map(
        [...look.segments, ...joins].map(({ needles, rows, fixed, pickup }) => [
          segmentKey(needles, rows, fixed),
          pickup,
        ]),
      ),
  );
  const strands = runs[0]?.trace.strands ?? [];
  return strands.flatMap(({ name: strand }) => {
    const points = pointsOver(runs, "strands", strand, more[strand]);
    return points.map((point, index): Hanging => {
      const { needle, row, rank, section } = point;
      const before = points[index - 1];
      const key = before && segmentKey(across(before, point), row - before.row, point.count);
      return {
        strand,
        needle,
        row,
        count: key === undefined ? 0 : pickups[section]!.get(key)!,
        rank,
        loop: point.count !== undefined,
        last: index === points.length - 1,
      };
    });
  });
}

/** The cords of one column. */
export function cordsOf(sections: readonly CountedSection[], more: HangingsMore = {}): readonly Cord[] {
  const hangings = hangingsOf(sections, more);
  const usedBy = (strands: readonly string[]): number =>
    hangings
      .filter(({ strand }) => strands.includes(strand))
      .reduce((sum, { count }) => sum + count, strands.length);
  const { strands = [], folded = [] } = sections[0]?.look.trace ?? {};
  const single = strands
    .map(({ name }) => name)
    .filter((name) => !folded.some((pair) => pair.includes(name)));
  return [...folded, ...single.map((name) => [name])].map((names) => ({
    strands: names,
    used: usedBy(names),
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

/** Yarn left at each end of a cord: long enough to thread a needle and sew it in. Common practice, no published source. */
export const tailMm = 200;

/** Each cord stitch takes two passes: one knits, one slips back. */
export const passesFor = (cordStitches: number): number => 2 * cordStitches;

/** Threads of a contrasting colour laid in while a cord is knitted, so that it can be counted in bundles. */
export interface Markers {
  /** Cord stitches from one to the next, and from the start to the first. */
  readonly every: number;
  readonly count: number;
  /** Cord stitches after the last one: from 1 to `every`, because none is laid in at the very end. */
  readonly after: number;
}

/** The marker threads of a cord of so many cord stitches. */
export function markersIn(cordStitches: number, every: number): Markers {
  const count = Math.max(0, Math.ceil(cordStitches / every) - 1);
  return { every, count, after: cordStitches - count * every };
}
