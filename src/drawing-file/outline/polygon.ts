import type { Stitch } from "../../cloth/gauge.ts";
import type { Contour, DrawnShape, Point } from "../drawing.ts";
import { distanceToChord } from "../flatten.ts";
import { keptPoints } from "../simplify.ts";
import type { OutlineProblem } from "./outline-problem.ts";
import { cm } from "./words.ts";

/** A quarter turn at a time, clockwise, in degrees. */
export type Turn = 0 | 90 | 180 | 270;

export interface ClosedLine {
  /** Corners in order, the last one not the first again; heights above the lowest. */
  readonly corners: readonly Point[];
  /** Heights of the shape's notches, in the same measure. */
  readonly notchHeights: readonly number[];
  readonly remarks: readonly string[];
}

/** Ends nearer than this are one point, in mm. */
const SAME_MM = 0.1;

/** More corners than a knitted edge can show: a row or a needle each on the largest bed. */
const MOST_CORNERS = 2000;

/**
 * The one closed line of a shape as a polygon, simplified to `toleranceMm`, turned, and moved so that its lowest point
 * lies at height 0. Points less than half a row above the lowest or below the highest are taken as level with it,
 * because a row can't be cut in two.
 */
export function closedLine(
  shape: DrawnShape,
  turn: Turn,
  stitch: Stitch,
  toleranceMm: number,
): ClosedLine | OutlineProblem {
  const cell = stitch.widthMm * stitch.heightMm;
  const lines = shape.contours.filter((line) => Math.abs(area(line.points)) > cell);
  const [line, second] = lines;
  if (!line) return { problem: "it encloses nothing that could be knitted" };
  if (second) return { problem: severalLines(lines) };
  const turned = simplified(
    line.points.map((point) => rotated(point, turn)),
    toleranceMm,
  );
  if (turned.length > MOST_CORNERS)
    return { problem: `it has more than ${MOST_CORNERS} corners, more than an edge of stitches can show` };
  const heights = turned.map(([, y]) => y);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const half = stitch.heightMm / 2;
  const corners = turned.map(([x, y]): Point => {
    const level = y - low < half ? low : high - y < half ? high : y;
    return [x, level - low];
  });
  const notchHeights = shape.notches.map((point) => rotated(point, turn)[1] - low);
  return { corners, notchHeights, remarks: openEnds(line) };
}

/** Shoelace formula; above 0 where the corners go counter-clockwise. */
function area(points: readonly Point[]): number {
  let twice = 0;
  for (const [index, [x, y]] of points.entries()) {
    const [nextX, nextY] = points[(index + 1) % points.length]!;
    twice += x * nextY - nextX * y;
  }
  return twice / 2;
}

function severalLines(lines: readonly Contour[]): string {
  const bySize = [...lines].sort((a, b) => Math.abs(area(b.points)) - Math.abs(area(a.points)));
  const bottom = Math.min(...bySize[0]!.points.map(([, y]) => y));
  const lowest = Math.min(...bySize[1]!.points.map(([, y]) => y)) - bottom;
  return `it has ${lines.length} closed lines, and a piece has one: the second begins ${cm(Math.abs(lowest))} ${lowest < 0 ? "below" : "above"} the foot of the largest (a hole, or another piece)`;
}

function openEnds({ points, closed }: Contour): readonly string[] {
  const [first, last] = [points[0]!, points.at(-1)!];
  const gap = Math.hypot(first[0] - last[0], first[1] - last[1]);
  return closed || gap <= SAME_MM
    ? []
    : [`its line is not closed: its two ends, ${cm(gap)} apart, are joined straight`];
}

function rotated([x, y]: Point, turn: Turn): Point {
  switch (turn) {
    case 0:
      return [x, y];
    case 90:
      return [y, -x];
    case 180:
      return [-x, -y];
    case 270:
      return [-y, x];
  }
}

/** Closed lines are simplified as two halves between two corners far apart, which therefore stay. */
function simplified(points: readonly Point[], toleranceMm: number): Point[] {
  const ring = points.filter((point, index) => index === 0 || !isSame(point, points[index - 1]!));
  if (ring.length > 1 && isSame(ring[0]!, ring.at(-1)!)) ring.pop();
  const start = ring.reduce((best, [, y], index) => (y < ring[best]![1] ? index : best), 0);
  const round = [...ring.slice(start), ...ring.slice(0, start + 1)];
  const kept = keptPoints(round.length, toleranceMm, (index, from, to) =>
    distanceToChord(round[index]!, round[from]!, round[to]!),
  );
  return kept.slice(0, -1).map((index) => round[index]!);
}

const isSame = (a: Point, b: Point): boolean => a[0] === b[0] && a[1] === b[1];
