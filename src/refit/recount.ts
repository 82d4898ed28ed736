import { bedSides } from "../cloth/bed.ts";
import { carriageAt, otherSide } from "../cloth/carriage.ts";
import {
  type CountedNeck,
  type CountedPiece,
  countNeck,
  mayStepAt,
  rowOf,
  type Stretch,
  stationNeedles,
  stretched,
} from "../cloth/counted-piece.ts";
import { type Corner, knittableEdge, wantedEdge } from "../cloth/edge.ts";
import { halfNeedles, type Stitch } from "../cloth/gauge.ts";
import type { Bed, Piece, Side } from "../garment/garment.ts";

/** How heights and widths of a piece become rows and needles. */
export interface Counting {
  readonly stitch: Stitch;
  readonly stretches: readonly Stretch[];
  /** Needles at each side for what cables draw in. */
  readonly extraNeedles: number;
}

/** A piece of which the first rows are knitted. */
export interface BegunPiece {
  readonly piece: Piece;
  /** As it was to be knitted, and up to `row` was. */
  readonly counted: CountedPiece;
  readonly counting: Counting;
  readonly row: number;
}

/**
 * The piece with its knitted rows as they are and the rest counted anew: heights and marks above the present row to
 * the row nearest by the new row height, edges evenly from the needles now in work to those of the next station.
 * Where the next station stays where it was, so does the edge up to it.
 *
 * @returns undefined where no row would be left to knit
 */
export function recount(begun: BegunPiece, anew: Counting): CountedPiece | undefined {
  const { piece, counted, row } = begun;
  const rows = rowAt(piece.outline.at(-1)!.heightMm, anew);
  if (rows <= row) return undefined;
  const neck = recountNeck(begun, anew, rows);
  const edge = (side: Side): readonly number[] =>
    withRest(
      begun,
      counted[side],
      rows,
      cornersOf(begun, begun.counting, side),
      cornersOf(begun, anew, side),
      side,
    );
  return {
    name: piece.name,
    rows,
    carriage: piece.carriage,
    left: edge("left"),
    right: edge("right"),
    ...(neck && { neck }),
    marks: new Map(
      piece.marks.map(({ name, heightMm }): [string, number] => {
        const now = counted.marks.get(name)!;
        if (now <= row) return [name, now];
        return [name, name === "neck" && neck ? neck.row : Math.max(row, rowAt(heightMm, anew))];
      }),
    ),
  };
}

/** Whether every row has its needles: on the bed, at least one in all, and one beside the neck at each side. */
export function canBeKnitted({ rows, left, right, neck }: CountedPiece, bed: Bed): boolean {
  const sides = bedSides(bed.needles);
  for (let row = 0; row <= rows; row++) {
    const [atLeft, atRight] = [left[row]!, right[row]!];
    if (atLeft > sides.left || atRight > sides.right || atLeft + atRight < 1) return false;
    if (!neck || row < neck.row) continue;
    if (atLeft <= neck.left[row - neck.row]! || atRight <= neck.right[row - neck.row]!) return false;
  }
  return true;
}

const rowAt = (heightMm: number, { stitch, stretches }: Counting): number =>
  stretched(rowOf(heightMm, stitch), stretches);

/**
 * The corners that are still to come. A station whose row has gone by although it was not reached is left out,
 * unless it is a step: that is then worked as soon as it can be.
 */
function cornersOf({ piece, counting, row }: BegunPiece, anew: Counting, side: Side): readonly Corner[] {
  const { outline } = piece;
  return outline.flatMap((station, index): Corner[] => {
    if (rowAt(station.heightMm, counting) <= row) return [];
    const corner = {
      row: rowAt(station.heightMm, anew),
      needles: stationNeedles(station, side, anew.stitch) + anew.extraNeedles,
    };
    if (corner.row > row) return [corner];
    const isStep = outline[index - 1]?.heightMm === station.heightMm;
    return isStep ? [{ ...corner, row }] : [];
  });
}

/** An edge with its knitted rows and what the corners to come ask for above them, as the bed can knit it. */
function withRest(
  { piece, row }: BegunPiece,
  knitted: readonly number[],
  lastRow: number,
  before: readonly Corner[],
  anew: readonly Corner[],
  side: Side,
): readonly number[] {
  const now = knitted[row]!;
  const wanted = wantedEdge([{ row, needles: now }, ...anew], lastRow);
  // A step that is overdue asks for its needles at once; they can change from the next row on.
  wanted[0] = now;
  const [first] = anew;
  if (first && first.row === before[0]?.row && first.needles === before[0].needles)
    for (let index = 1; row + index < first.row; index++) wanted[index] = knitted[row + index]!;
  const rest = knittableEdge(
    wanted,
    (index) => carriageAt(piece.carriage, row + index) === side,
    (index) => mayStepAt(piece, row + index),
  );
  return [...knitted.slice(0, row), ...rest];
}

function recountNeck(begun: BegunPiece, anew: Counting, lastRow: number): CountedNeck | undefined {
  const { piece, counted, counting, row } = begun;
  if (!counted.neck) return undefined;
  if (counted.neck.row > row)
    return countNeck(piece, anew.stitch, (heightMm) => Math.max(row + 1, rowAt(heightMm, anew)), lastRow);
  const above = row - counted.neck.row;
  const corners = (by: Counting): readonly Corner[] =>
    piece.neck
      .filter(({ heightMm }) => rowAt(heightMm, counting) > row && rowAt(heightMm, by) > row)
      .map(({ heightMm, widthMm }) => ({
        row: rowAt(heightMm, by),
        needles: halfNeedles(widthMm, by.stitch),
      }));
  const edge = (half: Side): readonly number[] => {
    const knitted = counted.neck![half];
    const asRows = [...Array<number>(counted.neck!.row).fill(knitted[0]!), ...knitted];
    return withRest(begun, asRows, lastRow, corners(counting), corners(anew), otherSide(half)).slice(
      counted.neck!.row,
    );
  };
  return { row: row - above, left: edge("left"), right: edge("right") };
}
