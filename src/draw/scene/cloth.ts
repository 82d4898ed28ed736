import type { CountedNeck, CountedPiece } from "../../cloth/counted-piece.ts";
import type { Side } from "../../garment/garment.ts";
import type { ClothPoint, Placer } from "./place.ts";

/** Needles side by side, from one boundary to another. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/**
 * The needles that knit each row. Shaping "at row r" is done when r rows are knitted, so it shows from the next row
 * on.
 */
export function cellsOf(piece: CountedPiece): readonly (readonly Span[])[] {
  return Array.from({ length: piece.rows }, (_, row) => {
    const whole: Span = { from: -piece.left[row]!, to: piece.right[row]! };
    const opening = openingAt(piece, row);
    if (!opening) return [whole];
    return [
      { from: whole.from, to: opening.from },
      { from: opening.to, to: whole.to },
    ].filter(({ from, to }) => from < to);
  });
}

/** The needles that the neck takes out of the row knitted after `row` rows. */
function openingAt({ neck }: CountedPiece, row: number): Span | undefined {
  if (!neck || row < neck.row) return undefined;
  return { from: -neck.left[row - neck.row]!, to: neck.right[row - neck.row]! };
}

/** The outline of all cells, up the left edge and down the right one. */
export function outlineOf(piece: CountedPiece, place: Placer): readonly ClothPoint[] {
  const { neck, rows } = piece;
  const corners = [
    ...staircase(rows, 0, (row) => -piece.left[row]!),
    ...(neck && neck.row < rows ? neckCorners(neck, rows) : []),
    ...staircase(rows, 0, (row) => piece.right[row]!).reverse(),
  ];
  return corners.map(({ boundary, row }) => place.boundary(boundary, row));
}

interface Corner {
  readonly boundary: number;
  readonly row: number;
}

function neckCorners(neck: CountedNeck, rows: number): readonly Corner[] {
  const edge = (half: Side): Corner[] =>
    staircase(rows, neck.row, (row) => (half === "left" ? -1 : 1) * neck[half][row - neck.row]!);
  return [...edge("left").reverse(), ...edge("right")];
}

/** Corners of an edge from `fromRow` up to the last row. */
function staircase(rows: number, fromRow: number, boundaryAt: (row: number) => number): Corner[] {
  const corners: Corner[] = [{ boundary: boundaryAt(fromRow), row: fromRow }];
  for (let row = fromRow + 1; row < rows; row++) {
    const [before, after] = [boundaryAt(row - 1), boundaryAt(row)];
    if (before !== after) corners.push({ boundary: before, row }, { boundary: after, row });
  }
  return [...corners, { boundary: boundaryAt(rows - 1), row: rows }];
}
