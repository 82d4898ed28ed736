import type { Stitch } from "../../cloth/gauge.ts";
import type { Point } from "../drawing.ts";
import type { OutlineProblem } from "./outline-problem.ts";
import { cm } from "./words.ts";

/** A strip of the piece between two heights, in mm; inside it every edge is straight. */
export interface Slab {
  readonly fromMm: number;
  readonly toMm: number;
  /** From left to right. */
  readonly parts: readonly Part[];
}

/** Where a part of a strip begins and ends across, at the strip's lower and upper height. */
export interface Part {
  readonly left: Ends;
  readonly right: Ends;
}

interface Ends {
  readonly low: number;
  readonly high: number;
}

/** Heights nearer than a fortieth of a row are one, because a curve broken into chords would be cut into slivers else. */
const HEIGHTS_PER_ROW = 40;

/** Lines may pass one another by this much, in mm, before they are said to cross: coordinates are rounded. */
const CROSSING_MM = 0.02;

/** Cuts a polygon into strips at the height of every corner, from the lowest upward. */
export function slabsOf(corners: readonly Point[], stitch: Stitch): readonly Slab[] | OutlineProblem {
  const level = levels(corners, stitch.heightMm / HEIGHTS_PER_ROW);
  const points = corners.map(([x, y]): Point => [x, level.get(y)!]);
  const heights = [...new Set(level.values())].sort((a, b) => a - b);
  const crossing = heights.slice(1).map((): Ends[] => []);
  const at = new Map(heights.map((height, index) => [height, index]));
  for (const [index, start] of points.entries()) {
    const end = points[(index + 1) % points.length]!;
    const [low, high] = start[1] < end[1] ? [start, end] : [end, start];
    const across = (height: number): number =>
      low[0] + ((high[0] - low[0]) * (height - low[1])) / (high[1] - low[1]);
    for (let strip = at.get(low[1])!; strip < at.get(high[1])!; strip++)
      crossing[strip]!.push({ low: across(heights[strip]!), high: across(heights[strip + 1]!) });
  }
  const slabs: Slab[] = [];
  for (const [strip, edges] of crossing.entries()) {
    const [fromMm, toMm] = [heights[strip]!, heights[strip + 1]!];
    edges.sort((a, b) => a.low + a.high - b.low - b.high);
    if (edges.some((edge, index) => passes(edges[index - 1], edge)))
      return { problem: `its line crosses itself ${cm((fromMm + toMm) / 2)} above the foot` };
    // A closed line is crossed as often going in as going out.
    const parts = edges.flatMap((left, index) =>
      index % 2 === 0 ? [{ left, right: edges[index + 1]! }] : [],
    );
    slabs.push({ fromMm, toMm, parts });
  }
  return slabs;
}

const passes = (left: Ends | undefined, right: Ends): boolean =>
  left !== undefined && (left.low > right.low + CROSSING_MM || left.high > right.high + CROSSING_MM);

/** The height that stands for each: the lowest of those that lie close together. */
function levels(corners: readonly Point[], closeMm: number): ReadonlyMap<number, number> {
  const level = new Map<number, number>();
  let lowest = Number.NEGATIVE_INFINITY;
  for (const height of corners.map(([, y]) => y).sort((a, b) => a - b)) {
    if (height - lowest > closeMm) lowest = height;
    level.set(height, lowest);
  }
  return level;
}
