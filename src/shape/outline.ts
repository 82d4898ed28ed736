import type { Stitch } from "../cloth/gauge.ts";
import type { Station } from "../garment/garment.ts";
import { pieceWidthMm } from "../garment/read/limits.ts";
import { inCentimetres } from "../report/words.ts";
import { CURVES, type CurveName, linesOf } from "./curve.ts";
import type { ShapeStation } from "./description.ts";
import { ShapeStop } from "./trouble.ts";

/** Each side of the outline at one height, in mm from the centre line. */
interface Sides {
  readonly heightMm: number;
  readonly leftMm: number;
  readonly rightMm: number;
}

/**
 * The outline of a shape in mm, its curves drawn by straight lines, and nothing said twice.
 *
 * @param sum the value of a sum of the description, in mm
 * @throws ShapeStop where the heights do not rise or there is no width
 */
export function outlineStations(
  described: readonly ShapeStation[],
  shape: string,
  sum: (text: string) => number,
  stitch: Stitch,
): readonly Station[] {
  const sides: Sides[] = [];
  const symmetric = described.every((station) => "width" in station);
  for (const station of described) {
    const at = sidesOf(station, sum);
    checkStation(at, sides.at(-1), shape);
    const from = sides.at(-1);
    const curved = station.curve !== undefined && from !== undefined && at.heightMm > from.heightMm;
    for (const next of curved ? curvedSides(station.curve, from, at, stitch) : [at])
      if (!same(next, sides.at(-1))) sides.push(next);
  }
  return sides.map(({ heightMm, leftMm, rightMm }) =>
    symmetric ? { heightMm, widthMm: leftMm + rightMm } : { heightMm, leftMm, rightMm },
  );
}

function sidesOf(station: ShapeStation, sum: (text: string) => number): Sides {
  const heightMm = sum(station.height);
  if ("width" in station) {
    const half = sum(station.width) / 2;
    return { heightMm, leftMm: half, rightMm: half };
  }
  return { heightMm, leftMm: sum(station.left), rightMm: sum(station.right) };
}

function curvedSides(curve: CurveName, from: Sides, to: Sides, stitch: Stitch): readonly Sides[] {
  const upMm = to.heightMm - from.heightMm;
  const [left, right] = [to.leftMm - from.leftMm, to.rightMm - from.rightMm];
  const lines = Math.max(linesOf(curve, left, upMm, stitch), linesOf(curve, right, upMm, stitch));
  return Array.from({ length: lines }, (_, index): Sides => {
    if (index === lines - 1) return to;
    const { across, up } = CURVES[curve]((index + 1) / lines);
    return {
      heightMm: from.heightMm + up * upMm,
      leftMm: from.leftMm + across * left,
      rightMm: from.rightMm + across * right,
    };
  });
}

function checkStation(at: Sides, before: Sides | undefined, shape: string): void {
  const least = before?.heightMm ?? 0;
  if (at.heightMm < least)
    throw impossible(
      `the measurements of this ${shape} leave no room between two of its heights`,
      `${inCentimetres(at.heightMm)} above ${inCentimetres(least)}`,
      "a greater length, or less for what lies below and above",
    );
  if (at.leftMm < 0 || at.rightMm < 0 || at.leftMm + at.rightMm < pieceWidthMm.least)
    throw impossible(
      `the measurements of this ${shape} leave it no width ${inCentimetres(at.heightMm)} above the cast-on edge`,
      inCentimetres(at.leftMm + at.rightMm),
      "greater widths",
    );
}

const impossible = (message: string, found: string, expected: string): ShapeStop =>
  new ShapeStop({ code: "shape-impossible", message, found, expected, blame: [] });

const same = (at: Sides, before: Sides | undefined): boolean =>
  at.heightMm === before?.heightMm && at.leftMm === before.leftMm && at.rightMm === before.rightMm;
