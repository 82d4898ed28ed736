import type { Sheet } from "./sheet.ts";

/** The machine-readable sheet, format `evenrow-sheet/1`; a piece has `make` where more than one of it are knitted. */
export const sheetToJson = ({ pieces }: Sheet): object => ({
  format: "evenrow-sheet/1",
  pieces: pieces.map(({ piece, make, needlesAtStart, rowsInAll, rows }) => ({
    piece,
    ...(make !== undefined && { make }),
    needles_at_start: needlesAtStart,
    rows_in_all: rowsInAll,
    rows,
  })),
});
