import type { Stitch } from "../../cloth/gauge.ts";
import type { Mark, NeckStation, Station } from "../../garment/garment.ts";
import type { DrawnShape, Point } from "../drawing.ts";
import { notOnePiece } from "./one-piece.ts";
import type { OutlineProblem } from "./outline-problem.ts";
import { closedLine, type Turn } from "./polygon.ts";
import { type Level, neckOf, outlineOf, profileOf } from "./profile.ts";
import { type Slab, slabsOf } from "./slabs.ts";
import { cm } from "./words.ts";

/** Within so many rows a level hem does not become wider than by so much. */
const HEM_ROWS = 4;
const HEM_SPREAD = 1.25;

/** How a drawn line is to be read. */
export interface ReadingOfLine {
  readonly stitch: Stitch;
  readonly turn: Turn;
  /** The centre line's distance from the left end of the cast-on edge; its middle where it is left out. */
  readonly centreMm?: number;
}

/** A drawn line as a piece has it. */
export interface DrawnOutline {
  readonly outline: readonly Station[];
  /** Empty where nothing is cut out at the top. */
  readonly neck: readonly NeckStation[];
  /** One for each height at which the drawing has a notch: "notch 1" is the lowest. */
  readonly marks: readonly Mark[];
  readonly remarks: readonly string[];
}

/**
 * Parts of a quarter stitch, the smaller of its width and height, that each step may lose; with the curves' own 0.05 mm
 * they stay within the quarter for every stitch of 2 mm or more.
 */
const SHARES = { corners: 0.2, symmetry: 0.2, profile: 0.45 } as const;

/** A part narrower than this is no longer knitted: what is left is bound off. */
const FEWEST_STITCHES = 2;

/**
 * Reads a closed line as a piece: its lowest edge is the cast-on edge, its two sides are the edges, and an opening at
 * the top is the neck. What is lost by simplifying stays under a quarter stitch.
 *
 * @returns heights and widths in mm, or why the line is not one knitted piece
 */
export function drawnOutline(shape: DrawnShape, reading: ReadingOfLine): DrawnOutline | OutlineProblem {
  const { stitch, turn } = reading;
  const quarter = Math.min(stitch.widthMm, stitch.heightMm) / 4;
  const line = closedLine(shape, turn, stitch, SHARES.corners * quarter);
  if ("problem" in line) return line;
  const slabs = slabsOf(line.corners, stitch);
  if ("problem" in slabs) return slabs;
  const problem = castOnProblem(slabs, line.corners, stitch) ?? notOnePiece(slabs, stitch);
  if (problem) return problem;
  const castOn = slabs[0]!.parts[0]!;
  const centre =
    reading.centreMm === undefined
      ? (castOn.left.low + castOn.right.low) / 2
      : castOn.left.low + reading.centreMm;
  const whole = profileOf(slabs, centre);
  const profile = cutWhereNarrow(whole, FEWEST_STITCHES * stitch.widthMm);
  const offCentre = neckOffCentre(profile, stitch);
  if (offCentre) return offCentre;
  const toleranceMm = SHARES.profile * quarter;
  const topMm = profile.at(-1)!.heightMm;
  const lostMm = whole.at(-1)!.heightMm - topMm;
  return {
    outline: outlineOf(profile, toleranceMm, SHARES.symmetry * quarter),
    neck: neckOf(profile, toleranceMm),
    marks: notchMarks(line.notchHeights, topMm, stitch),
    remarks: [
      ...line.remarks,
      ...curvedFoot(whole, stitch),
      ...(lostMm > stitch.heightMm
        ? [
            `it runs out narrower than ${FEWEST_STITCHES} stitches at the top: it is bound off at ${cm(topMm)}, ${cm(lostMm)} below its highest point`,
          ]
        : []),
    ],
  };
}

/** The lowest edge must be level over two stitches at least; what is told is how steep the flatter side beside it is. */
function castOnProblem(
  slabs: readonly Slab[],
  corners: readonly Point[],
  stitch: Stitch,
): OutlineProblem | undefined {
  const part = slabs[0]?.parts[0];
  if (!part || part.right.low - part.left.low >= FEWEST_STITCHES * stitch.widthMm) return undefined;
  const lowest = corners.findIndex(([, y]) => y === 0);
  const foot = corners[lowest]!;
  const beside = [corners.at(lowest - 1)!, corners[(lowest + 1) % corners.length]!].filter(([, y]) => y > 0);
  const slope = (point: Point): number => point[1] / Math.abs(point[0] - foot[0]);
  const flattest = beside.sort((a, b) => slope(a) - slope(b))[0] ?? foot;
  const across = flattest[0] - foot[0];
  return {
    problem: `its lowest edge is not level: from its lowest point it rises ${cm(flattest[1])} over ${cm(Math.abs(across))} to the ${across < 0 ? "left" : "right"}`,
    expected:
      "a level edge to cast on, at the foot of the drawing; turn: 90 turns a drawing that lies on its side",
  };
}

/** A hem that curves up is knitted by casting on more at the sides, which a knitter may not have meant. */
function curvedFoot(profile: readonly Level[], stitch: Stitch): readonly string[] {
  const few = profile.filter(({ heightMm }) => heightMm <= HEM_ROWS * stitch.heightMm);
  const [foot, above] = [profile[0]!, few.at(-1)!];
  const [narrow, wide] = [foot.leftMm + foot.rightMm, above.leftMm + above.rightMm];
  return wide <= HEM_SPREAD * narrow
    ? []
    : [
        `its lowest edge is level over ${cm(narrow)} only: more stitches are cast on at the sides, to ${cm(wide)} at ${cm(above.heightMm)} above it`,
      ];
}

/** The profile up to where a part becomes narrower than can be knitted. */
function cutWhereNarrow(profile: readonly Level[], leastMm: number): readonly Level[] {
  let end = profile.length;
  while (end > 1 && narrowest(profile[end - 1]!) < leastMm) end--;
  const [below, above] = [profile[end - 1]!, profile[end]];
  if (!above || above.heightMm === below.heightMm) return profile.slice(0, end);
  const share = (narrowest(below) - leastMm) / (narrowest(below) - narrowest(above));
  const between = (from: number, to: number): number => from + share * (to - from);
  const cut: Level = {
    heightMm: between(below.heightMm, above.heightMm),
    leftMm: between(below.leftMm, above.leftMm),
    rightMm: between(below.rightMm, above.rightMm),
    ...(below.neck &&
      above.neck && {
        neck: {
          leftMm: between(below.neck.leftMm, above.neck.leftMm),
          rightMm: between(below.neck.rightMm, above.neck.rightMm),
        },
      }),
  };
  return [...profile.slice(0, end), cut];
}

const narrowest = ({ leftMm, rightMm, neck }: Level): number =>
  neck ? Math.min(leftMm - neck.leftMm, rightMm - neck.rightMm) : leftMm + rightMm;

/** A neck opens around the centre, as far to one side as to the other. */
function neckOffCentre(profile: readonly Level[], stitch: Stitch): OutlineProblem | undefined {
  const off = profile.find(
    ({ neck }) => neck !== undefined && Math.abs(neck.leftMm - neck.rightMm) > stitch.widthMm,
  );
  if (!off?.neck) return undefined;
  const [left, right] = [off.neck.leftMm, off.neck.rightMm];
  return {
    problem: `its neck is not centred: ${cm(off.heightMm)} above the foot it reaches ${cm(left)} to the left of the centre line and ${cm(right)} to the right`,
    expected: "a neck as wide on both sides, or a centre: that lies in its middle",
  };
}

function notchMarks(heights: readonly number[], topMm: number, stitch: Stitch): readonly Mark[] {
  const inside = heights.filter((height) => height > 0 && height < topMm).sort((a, b) => a - b);
  const apart: number[] = [];
  for (const height of inside)
    if (height - (apart.at(-1) ?? Number.NEGATIVE_INFINITY) >= stitch.heightMm) apart.push(height);
  return apart.map((heightMm, index) => ({
    name: `notch ${index + 1}`,
    heightMm: Math.round(heightMm * 1000) / 1000,
  }));
}
