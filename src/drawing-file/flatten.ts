import { FLATTENING_TOLERANCE_MM, type Point } from "./drawing.ts";

/** Halvings after which a curve is straight whatever it is: a curve of 100 m needs about eleven. */
const mostHalvings = 16;

/**
 * Breaks a cubic Bezier curve into straight pieces, halving it until its control points lie within the tolerance of
 * the chord: the curve stays inside their hull, so it is then no further off than they are.
 *
 * @returns the points after `from`, the last of them `to`
 */
export function flattenCubic(from: Point, first: Point, second: Point, to: Point): Point[] {
  const points: Point[] = [];
  halve(from, first, second, to, mostHalvings, points);
  return points;
}

function halve(from: Point, first: Point, second: Point, to: Point, left: number, points: Point[]): void {
  const flat =
    distanceToChord(first, from, to) <= FLATTENING_TOLERANCE_MM &&
    distanceToChord(second, from, to) <= FLATTENING_TOLERANCE_MM;
  if (flat || left === 0) {
    points.push(to);
    return;
  }
  // De Casteljau's construction at the middle.
  const [a, b, c] = [middle(from, first), middle(first, second), middle(second, to)];
  const [ab, bc] = [middle(a, b), middle(b, c)];
  const centre = middle(ab, bc);
  halve(from, a, ab, centre, left - 1, points);
  halve(centre, bc, c, to, left - 1, points);
}

/** The same for a quadratic curve, which is the cubic one with its control point taken twice by two thirds. */
export function flattenQuadratic(from: Point, control: Point, to: Point): Point[] {
  const towards = (end: Point): Point => [
    end[0] + (2 / 3) * (control[0] - end[0]),
    end[1] + (2 / 3) * (control[1] - end[1]),
  ];
  return flattenCubic(from, towards(from), towards(to), to);
}

/**
 * Breaks a circular arc between two points into chords whose rise keeps to the tolerance.
 *
 * @param bulge tangent of a quarter of the arc's angle, above 0 where it turns counter-clockwise (DXF group 42)
 * @returns the points after `from`, the last of them `to`
 */
export function flattenBulge(from: Point, to: Point, bulge: number): Point[] {
  const chord = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (bulge === 0 || chord === 0) return [to];
  const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const turn = 4 * Math.atan(bulge);
  // The centre lies on the chord's perpendicular, left of it for a counter-clockwise arc of less than half a turn.
  const off = (1 - bulge * bulge) / (4 * bulge);
  const centre: Point = [
    (from[0] + to[0]) / 2 - off * (to[1] - from[1]),
    (from[1] + to[1]) / 2 + off * (to[0] - from[0]),
  ];
  const start = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
  const steps = arcSteps(radius, Math.abs(turn));
  return [...arcPoints(centre, radius, start, turn, steps).slice(1, -1), to];
}

/** Points of an arc about a centre, both ends included; angles in radians, counter-clockwise above 0. */
export function flattenArc(centre: Point, radius: number, start: number, turn: number): Point[] {
  return arcPoints(centre, radius, start, turn, arcSteps(radius, Math.abs(turn)));
}

function arcPoints(centre: Point, radius: number, start: number, turn: number, steps: number): Point[] {
  return Array.from({ length: steps + 1 }, (_, step): Point => {
    const angle = start + (turn * step) / steps;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  });
}

/** An arc of the farthest radius takes 3142 chords for a whole turn. */
const mostChords = 4000;

/** A chord over the angle a rises `radius * (1 - cos(a / 2))`. */
function arcSteps(radius: number, turn: number): number {
  const rise = Math.min(1, FLATTENING_TOLERANCE_MM / radius);
  const steps = Math.ceil(turn / (2 * Math.acos(1 - rise)));
  return steps >= 1 ? Math.min(steps, mostChords) : 1;
}

const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** Distance from a point to the straight piece between two others, in their unit. */
export function distanceToChord(point: Point, from: Point, to: Point): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = dx * dx + dy * dy;
  const along = length === 0 ? 0 : ((point[0] - from[0]) * dx + (point[1] - from[1]) * dy) / length;
  const at = Math.min(1, Math.max(0, along));
  return Math.hypot(point[0] - from[0] - at * dx, point[1] - from[1] - at * dy);
}
