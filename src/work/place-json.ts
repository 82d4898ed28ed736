import { type PieceWork, stepOf } from "./record.ts";
import { partsOf } from "./steps.ts";

/** Where a piece stands, machine-readable, format `evenrow-place/1`; `half` only where it is worked in two. */
export function placeToJson(piece: PieceWork): object {
  const { row, part } = stepOf(piece);
  return {
    format: "evenrow-place/1",
    piece: piece.sheet.piece,
    row,
    rows: piece.sheet.rowsInAll,
    ...(partsOf(piece.sheet) > 1 && { half: part }),
  };
}
