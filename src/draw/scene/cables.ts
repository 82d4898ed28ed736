import type { Side } from "../../garment/garment.ts";
import type { SheetPiece } from "../../sheet/sheet.ts";
import type { Span } from "./cloth.ts";
import { boundaryBefore, type ClothPoint, type Placer } from "./place.ts";

/** Stitches that change places; the point is the middle of the range. */
export interface CableCrossing extends Span, ClothPoint {
  readonly motif: string;
  readonly placement: number;
  readonly column: number;
  readonly row: number;
  /** Stitches of the left and of the right group, as the knitter sees them before they cross. */
  readonly left: number;
  readonly right: number;
  /** The group in front on the far, knit side; it is put back first. */
  readonly over: Side;
  /** Half the rows to the nearest other crossing of the same column, or to the piece's end. */
  readonly halfRows: number;
}

export function cableCrossingsOf(sheet: SheetPiece, rows: number, place: Placer): readonly CableCrossing[] {
  const crossings = sheet.rows.flatMap(({ row, do: actions }) =>
    actions.flatMap((action) => {
      if (action.act !== "cross") return [];
      const from = boundaryBefore(action.from);
      const to = boundaryBefore(action.to) + 1;
      const { motif, placement, column, left, right, over } = action;
      const point = place.boundary((from + to) / 2, row);
      return [{ motif, placement, column, row, from, to, left, right, over, ...point }];
    }),
  );
  return crossings.map((crossing) => {
    const apart = crossings
      .filter(
        (other) =>
          other !== crossing &&
          other.placement === crossing.placement &&
          other.from < crossing.to &&
          crossing.from < other.to,
      )
      .map((other) => Math.abs(other.row - crossing.row));
    const alone = 2 * Math.max(crossing.left, crossing.right);
    return {
      ...crossing,
      halfRows: Math.min(...apart, alone, 2 * (rows - crossing.row), 2 * crossing.row) / 2,
    };
  });
}
