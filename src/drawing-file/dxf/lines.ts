import type { DxfEntity, DxfVertex } from "dxf";
import { type Contour, MOST_POINTS, type Point } from "../drawing.ts";
import { flattenArc, flattenBulge } from "../flatten.ts";

/** Ends nearer than this belong together, in mm: writers round coordinates to a hundredth. */
const JOIN_MM = 0.1;

/** Entities that draw a line that can be followed. */
const LINES = ["POLYLINE", "LWPOLYLINE", "LINE", "ARC"];

export const isLine = ({ type, polygonMesh, polyfaceMesh }: DxfEntity): boolean =>
  LINES.includes(type) && polygonMesh !== true && polyfaceMesh !== true;

/** One entity as a line in mm, its arcs broken into chords; undefined where a number of it is missing. */
export function lineOf(entity: DxfEntity, unitMm: number): Contour | undefined {
  const mirrored = entity.extrusionZ === -1 ? -1 : 1;
  const at = (vertex: DxfVertex | undefined): Point => [
    mirrored * (vertex?.x ?? Number.NaN) * unitMm,
    (vertex?.y ?? Number.NaN) * unitMm,
  ];
  const points = pointsOf(entity, at, unitMm, mirrored);
  return points.every((point) => point.every(Number.isFinite))
    ? { points, closed: entity.closed === true }
    : undefined;
}

function pointsOf(
  entity: DxfEntity,
  at: (vertex: DxfVertex | undefined) => Point,
  unitMm: number,
  mirrored: 1 | -1,
): readonly Point[] {
  if (entity.type === "LINE") return [at(entity.start), at(entity.end)];
  if (entity.type === "ARC") {
    const { r = Number.NaN, startAngle = Number.NaN, endAngle = Number.NaN } = entity;
    const turn = (((endAngle - startAngle) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
    if (!(r > 0) || !Number.isFinite(turn)) return [[Number.NaN, Number.NaN]];
    const points = flattenArc(
      [(entity.x ?? Number.NaN) * unitMm, (entity.y ?? Number.NaN) * unitMm],
      r * unitMm,
      startAngle,
      turn,
    );
    return points.map(([x, y]): Point => [mirrored * x, y]);
  }
  const vertices = entity.vertices ?? [];
  const ends = entity.closed === true ? [...vertices, vertices[0]] : vertices;
  const points: Point[] = [];
  for (const [index, vertex] of ends.entries()) {
    const before = ends[index - 1];
    if (index === 0) points.push(at(vertex));
    else points.push(...flattenBulge(at(before), at(vertex), mirrored * (before?.bulge ?? 0)));
    if (points.length > MOST_POINTS) break;
  }
  return points;
}

/** Joins open lines whose ends meet, so that a boundary drawn in several strokes becomes one. */
export function joined(lines: readonly Contour[]): readonly Contour[] {
  const done = lines.filter((line) => line.closed || meets(line.points[0], line.points.at(-1)));
  const open = lines.filter((line) => !done.includes(line)).map(({ points }) => [...points]);
  for (let stroke = open.pop(); stroke !== undefined; stroke = open.pop()) {
    let line: readonly Point[] = stroke;
    for (let next = takeMeeting(open, line); next !== undefined; next = takeMeeting(open, line)) line = next;
    done.push({ points: line, closed: meets(line[0], line.at(-1)) });
  }
  return done.map((line) => ({ ...line, closed: line.closed || meets(line.points[0], line.points.at(-1)) }));
}

/** Takes a stroke out that goes on where the line ends, and gives both as one line. */
function takeMeeting(open: Point[][], line: readonly Point[]): readonly Point[] | undefined {
  const end = line.at(-1);
  if (meets(line[0], end)) return undefined;
  const at = open.findIndex((other) => meets(other[0], end) || meets(other.at(-1), end));
  if (at < 0) return undefined;
  const [other = []] = open.splice(at, 1);
  return [...line, ...(meets(other[0], end) ? other : other.reverse()).slice(1)];
}

const meets = (a: Point | undefined, b: Point | undefined): boolean =>
  a !== undefined && b !== undefined && Math.hypot(a[0] - b[0], a[1] - b[1]) <= JOIN_MM;
