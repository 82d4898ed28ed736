import { copyCount } from "./copies.ts";
import { type PieceWork, stepOf } from "./record.ts";
import { partsOf } from "./steps.ts";

/**
 * Where a piece stands, machine-readable, format `evenrow-place/1`; `half` only where it is worked in two, `copy` and `make` only
 * where several of it are knitted.
 */
export function placeToJson(piece: PieceWork): object {
  const { row, part } = stepOf(piece);
  const { copy, make } = copyCount(piece);
  return {
    format: "evenrow-place/1",
    piece: piece.sheet.piece,
    ...(make > 1 && { copy, make }),
    row,
    rows: piece.sheet.rowsInAll,
    ...(partsOf(piece.sheet) > 1 && { half: part }),
  };
}
