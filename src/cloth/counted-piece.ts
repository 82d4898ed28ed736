import type { Bed, Piece, Side } from "../garment/garment.ts";
import { bedSides, type NeedleRange, needlesBetween } from "./bed.ts";
import { carriageAt } from "./carriage.ts";
import { type Corner, knittableEdge, wantedEdge } from "./edge.ts";
import { halfNeedles, nearest, type Stitch } from "./gauge.ts";

/** A piece in whole needles and whole rows, as it will be knitted. */
export interface CountedPiece {
  readonly name: string;
  /** Rows from the cast-on edge to the bind-off. */
  readonly rows: number;
  readonly carriage: Side;
  /** Needles in work left of the centre once each row's shaping is done; index = rows knitted. */
  readonly left: readonly number[];
  readonly right: readonly number[];
  readonly neck?: CountedNeck;
  readonly marks: ReadonlyMap<string, number>;
}

/** The opening around the centre; above `row` the piece is worked in two halves. */
export interface CountedNeck {
  readonly row: number;
  /** Needles from the centre to each half's neck edge; index = rows knitted since `row`. */
  readonly left: readonly number[];
  readonly right: readonly number[];
}

/** A change of length, spread over the rows between two rows of the piece as it was counted at first. */
export interface Stretch {
  readonly fromRow: number;
  readonly toRow: number;
  readonly change: number;
}

/**
 * Counts a piece: stations to the nearest needle and row, shaping spread evenly between them.
 *
 * @param stretches changes of length; their ranges must not overlap
 * @param extraNeedles needles added at each side, to make up for what cables draw in
 */
export function countPiece(
  piece: Piece,
  stitch: Stitch,
  stretches: readonly Stretch[] = [],
  extraNeedles = 0,
): CountedPiece {
  const toRow = (heightMm: number): number => stretched(rowOf(heightMm, stitch), stretches);
  const rows = toRow(piece.outline.at(-1)!.heightMm);
  const edge = (side: Side): readonly number[] =>
    knittableEdge(
      wantedEdge(outlineCorners(piece, side, stitch, toRow), rows).map((needles) => needles + extraNeedles),
      (row) => carriageAt(piece.carriage, row) === side,
      (row) => mayStepAt(piece, row),
    );
  const neck = countNeck(piece, stitch, toRow, rows);
  return {
    name: piece.name,
    rows,
    carriage: piece.carriage,
    left: edge("left"),
    right: edge("right"),
    ...(neck && { neck }),
    marks: new Map(piece.marks.map((mark) => [mark.name, toRow(mark.heightMm)])),
  };
}

/** One side's corners in needles and rows; `toRow` gives the row of a height. */
export const outlineCorners = (
  { outline }: Piece,
  side: Side,
  stitch: Stitch,
  toRow: (heightMm: number) => number,
): readonly Corner[] =>
  outline.map((station) => ({
    row: toRow(station.heightMm),
    needles: stationNeedles(station, side, stitch),
  }));

/** The neck's corners, from the centre to either side. */
export const neckCorners = (
  { neck }: Piece,
  stitch: Stitch,
  toRow: (heightMm: number) => number,
): readonly Corner[] =>
  neck.map(({ heightMm, widthMm }) => ({ row: toRow(heightMm), needles: halfNeedles(widthMm, stitch) }));

/** Whether single needles may change once so many rows are knitted. */
export const mayStepAt = ({ shapingOn }: Pick<Piece, "shapingOn">, row: number): boolean =>
  shapingOn !== "even rows" || row % 2 === 0;

/** The row nearest to a height above the cast-on edge. */
export const rowOf = (heightMm: number, stitch: Stitch): number => nearest(heightMm / stitch.heightMm);

/** Where a row lies once the piece has been lengthened or shortened. */
export function stretched(row: number, stretches: readonly Stretch[]): number {
  let moved = row;
  for (const { fromRow, toRow, change } of stretches) {
    if (row >= toRow) moved += change;
    else if (row > fromRow)
      moved += nearest(((row - fromRow) * (toRow - fromRow + change)) / (toRow - fromRow)) - (row - fromRow);
  }
  return moved;
}

/** Needles from the centre to one edge at a station. */
export function stationNeedles(station: Piece["outline"][number], side: Side, stitch: Stitch): number {
  if ("widthMm" in station) return halfNeedles(station.widthMm, stitch);
  return nearest((side === "left" ? station.leftMm : station.rightMm) / stitch.widthMm);
}

/**
 * The neck opening in needles and rows; undefined where there is none.
 *
 * @param toRow the row of a height
 */
export function countNeck(
  piece: Piece,
  stitch: Stitch,
  toRow: (heightMm: number) => number,
  lastRow: number,
): CountedNeck | undefined {
  const [lowest] = piece.neck;
  if (!lowest) return undefined;
  const row = toRow(lowest.heightMm);
  const wanted = wantedEdge(neckCorners(piece, stitch, toRow), lastRow);
  // Each half's neck edge is on the side away from the half: the left half is bound off there from the right.
  const edge = (half: Side): readonly number[] =>
    knittableEdge(
      wanted,
      (index) => carriageAt(piece.carriage, row + index) !== half,
      (index) => mayStepAt(piece, row + index),
    );
  return { row, left: edge("left"), right: edge("right") };
}

/** First and last needle in work at a row, the neck left aside. */
export const needlesAt = (piece: CountedPiece, row: number): NeedleRange =>
  needlesBetween(-piece.left[row]!, piece.right[row]!);

/** First and last needle of one half at a row from the neck's on. */
export const halfNeedlesAt = (
  piece: CountedPiece & { neck: CountedNeck },
  half: Side,
  row: number,
): NeedleRange =>
  half === "left"
    ? needlesBetween(-piece.left[row]!, -piece.neck.left[row - piece.neck.row]!)
    : needlesBetween(piece.neck.right[row - piece.neck.row]!, piece.right[row]!);

/** Whether the bed has a needle for every stitch of the piece at its widest. */
export function fitsBed(piece: CountedPiece, bed: Bed): boolean {
  const sides = bedSides(bed.needles);
  return Math.max(...piece.left) <= sides.left && Math.max(...piece.right) <= sides.right;
}
