import { nearest, type Stitch } from "../cloth/gauge.ts";
import type { NeckStation } from "../garment/garment.ts";
import { inCentimetres } from "../report/words.ts";
import type { NeckDescription, NeckStep } from "./description.ts";
import { readSum } from "./sums.ts";
import { ShapeStop } from "./trouble.ts";

/** Where a neckline is cut out of a piece, in mm. */
export interface NeckPlace {
  /** The neckline's name, for messages. */
  readonly style: string;
  readonly widthMm: number;
  readonly depthMm: number;
  /** The height of the shoulders. */
  readonly topMm: number;
}

/** The neckline in whole stitches and rows, from its lowest point upward. */
export interface NeckCount {
  readonly stitches: number;
  readonly centre: number;
  /** Stitches taken off each side, so many rows above the centre's, in rising order. */
  readonly steps: readonly { readonly row: number; readonly take: number }[];
  /** The row from which all that is left is taken off evenly; undefined where the steps take it all. */
  readonly evenFrom?: number;
}

const NECK_NAMES: ReadonlySet<string> = new Set(["stitches", "rest", "left", "stitch"]);

/**
 * Counts a neckline of so many stitches (an even number) by its description's rule.
 *
 * @param stitchMm the width of a stitch
 */
export function countNeckline(neck: NeckDescription, stitches: number, stitchMm: number): NeckCount {
  const sum = (text: string, values: Readonly<Record<string, number>>): number =>
    Math.round(readSum(text, NECK_NAMES).value(new Map(Object.entries(values))) ?? 0);
  const cloth = { stitches, stitch: stitchMm };
  const centre = Math.min(stitches, Math.max(0, 2 * Math.round(sum(neck.centre, cloth) / 2)));
  const rest = (stitches - centre) / 2;
  const steps: { row: number; take: number }[] = [];
  let [row, left] = [0, rest];
  for (const step of neck.steps) {
    if (left === 0) break;
    if ("evenly" in step) return { stitches, centre, steps, evenFrom: row };
    const { take, times } = sizesOf(step, (text) => sum(text, { ...cloth, rest, left }));
    for (let time = 0; time < times && left > 0; time++) {
      row += step.every;
      steps.push({ row, take: Math.min(take, left) });
      left -= Math.min(take, left);
    }
  }
  return { stitches, centre, steps };
}

function sizesOf(
  { take, times }: Extract<NeckStep, { take: string }>,
  sum: (text: string) => number,
): { readonly take: number; readonly times: number } {
  const stitches = sum(take);
  return { take: stitches, times: stitches > 0 ? sum(times) : 0 };
}

/**
 * The neckline as the stations of a piece. Each stands on a whole row and at a whole number of stitches, so that
 * counting the piece gives the rule's own numbers again.
 *
 * @throws ShapeStop where the depth has not the rows that the steps take
 */
export function neckStations(
  neck: NeckDescription,
  place: NeckPlace,
  stitch: Stitch,
): readonly NeckStation[] {
  const { widthMm, depthMm, topMm } = place;
  const counted = countNeckline(neck, 2 * nearest(widthMm / stitch.widthMm / 2), stitch.widthMm);
  const topRow = nearest(topMm / stitch.heightMm);
  const rows = nearest(depthMm / stitch.heightMm);
  checkRows(counted, rows, place, stitch);
  const startRow = topRow - rows;
  const station = (row: number, stitches: number): NeckStation => ({
    heightMm: (startRow + row) * stitch.heightMm,
    widthMm: stitches * stitch.widthMm,
  });
  const stations = [station(0, counted.centre)];
  let width = counted.centre;
  for (const { row, take } of counted.steps) {
    stations.push(station(row, width), station(row, width + 2 * take));
    width += 2 * take;
  }
  if (counted.evenFrom !== undefined && counted.evenFrom > 0) stations.push(station(counted.evenFrom, width));
  stations.push({ heightMm: topMm, widthMm: counted.stitches * stitch.widthMm });
  return stations;
}

/** The last row shapes nothing more, and several stitches may have to wait a row for the carriage. */
function checkRows(
  { stitches, steps, evenFrom }: NeckCount,
  rows: number,
  { style, depthMm, topMm }: NeckPlace,
  stitch: Stitch,
): void {
  const last = evenFrom === undefined ? steps.at(-1) : { row: evenFrom + 1, take: 1 };
  const needed = last ? last.row + (last.take > 1 ? 2 : 1) : 1;
  if (rows < needed)
    throw new ShapeStop({
      code: "neck-too-shallow",
      message: `a ${style} neck of ${stitches} stitches takes ${needed} rows, and its depth has ${rows}`,
      found: inCentimetres(depthMm),
      expected: `neck depth: ${inCentimetres(Math.ceil(needed * stitch.heightMm))} or more, or a narrower neck width`,
      blame: ["neck depth", "neck width", "neck"],
    });
  if (depthMm >= topMm || nearest(topMm / stitch.heightMm) - rows < 1)
    throw new ShapeStop({
      code: "shape-impossible",
      message: "the neck is as deep as the piece is long",
      found: `neck depth ${inCentimetres(depthMm)}, length ${inCentimetres(topMm)}`,
      expected: "a neck depth less than the length",
      blame: ["neck depth", "length", "neck"],
    });
}
