import svgpath from "svgpath";
import { type Contour, FARTHEST_MM, MOST_POINTS, type Point } from "../drawing.ts";
import { flattenCubic, flattenQuadratic } from "../flatten.ts";

type SvgPath = ReturnType<typeof svgpath>;

/** A path's lines in mm, y upward. */
export interface FlatPath {
  readonly contours: readonly Contour[];
  /** What is wrong from its first bad segment on; what stands before it is used (SVG 2, section 9.5.4). */
  readonly broken?: string;
  /** Why nothing of it can be used. */
  readonly refusal?: string;
}

/**
 * Reads path data by the grammar of SVG 2 (section 9.3) and breaks its curves and arcs into straight pieces.
 *
 * @param transforms the element's own list of transforms, then those of its parents, outward
 * @param scale mm of one user unit across and up
 */
export function flatPath(
  data: string,
  transforms: readonly string[],
  scale: { readonly xMm: number; readonly yMm: number },
): FlatPath {
  const { path, broken } = parsed(data);
  const said = broken === undefined ? {} : { broken };
  if (segmentCount(path) > MOST_POINTS) return { contours: [], refusal: tooManyPoints, ...said };
  // Arcs become curves within 0.03 % of their radius. They do so before they are moved, because the library loses an
  // arc's sense of turning when it mirrors it.
  path.abs().unshort().unarc();
  for (const transform of transforms) path.transform(transform);
  // Down the page is down the piece: heights count upward.
  path.matrix([scale.xMm, 0, 0, -scale.yMm, 0, 0]).abs();
  const contours = traced(path);
  if (typeof contours === "string") return { contours: [], refusal: contours, ...said };
  return { contours, ...said };
}

const tooManyPoints = `it has more than ${MOST_POINTS} points`;

/** The path up to its first bad segment, and what is wrong there. */
function parsed(data: string): { readonly path: SvgPath; readonly broken?: string } {
  const path = svgpath(withoutLeadingZeros(data));
  const problem = "err" in path && typeof path.err === "string" ? path.err : "";
  // The parser knows a command of its own that no version of SVG has.
  const strange = /r/i.exec(data);
  if (strange) {
    const before = parsed(data.slice(0, strange.index));
    return before.broken === undefined ? { ...before, broken: badAt(data, strange.index) } : before;
  }
  if (problem === "") return { path };
  const at = /at pos (\d+)/.exec(problem)?.[1];
  return { path, broken: at === undefined ? "it does not start with M or m" : badAt(data, Number(at)) };
}

function badAt(data: string, at: number): string {
  const command = data[at] ?? "";
  if (/b/i.test(command))
    return `the command ${command} (bearing) at character ${at + 1} of d is only a proposal for SVG, which programs read in different ways`;
  const near = data.slice(Math.max(0, at - 12), at + 12).trim();
  return `d makes no sense from character ${at + 1} on, near "${near}"`;
}

/**
 * Numbers such as 007 are well-formed in SVG, and the parser refuses them. Spaces take the zeros' place, so that
 * positions stay. Arcs are left alone: their flags may stand without a space, as in `a5 5 0 015 5`.
 */
const withoutLeadingZeros = (data: string): string =>
  data.replace(/[b-df-z][^a-df-z]*/gi, (segment) =>
    segment.replace(
      /(?<![\d.]|e[-+]?)([-+]?)(0+)(?=\d)/gi,
      (_, sign: string, zeros: string) => `${" ".repeat(zeros.length)}${sign}`,
    ),
  );

function segmentCount(path: SvgPath): number {
  let count = 0;
  path.iterate(() => {
    count++;
  }, true);
  return count;
}

/** The lines of a path whose commands are all absolute, without arcs and shorthands; or why there are none. */
function traced(path: SvgPath): readonly Contour[] | string {
  const contours: { points: Point[]; closed: boolean }[] = [];
  let [count, refusal] = [0, ""];
  path.iterate((segment, _, x, y) => {
    if (refusal !== "") return;
    const [command, ...numbers] = segment;
    if (numbers.some((number) => !(Math.abs(Number(number)) <= FARTHEST_MM))) {
      refusal = "some of its coordinates lie beyond all measure";
      return;
    }
    const open = contours.at(-1);
    if (command === "M") {
      contours.push({ points: [[Number(numbers[0]), Number(numbers[1])]], closed: false });
      return;
    }
    if (!open) return;
    if (/z/i.test(command)) {
      open.closed = true;
      return;
    }
    // After a close the next command starts where the closed line started, without a move.
    const line = open.closed ? { points: [[x, y] as Point], closed: false } : open;
    if (line !== open) contours.push(line);
    const added = pointsAfter([x, y], segment);
    line.points.push(...added);
    count += added.length;
    if (count > MOST_POINTS) refusal = tooManyPoints;
  });
  return refusal === "" ? contours.filter(({ points }) => points.length > 1) : refusal;
}

type Segment = Parameters<Parameters<SvgPath["iterate"]>[0]>[0];

function pointsAfter(from: Point, segment: Segment): readonly Point[] {
  switch (segment[0]) {
    case "L":
      return [[segment[1], segment[2]]];
    case "H":
      return [[segment[1], from[1]]];
    case "V":
      return [[from[0], segment[1]]];
    case "C":
      return flattenCubic(from, [segment[1], segment[2]], [segment[3], segment[4]], [segment[5], segment[6]]);
    case "Q":
      return flattenQuadratic(from, [segment[1], segment[2]], [segment[3], segment[4]]);
    default:
      return [];
  }
}
