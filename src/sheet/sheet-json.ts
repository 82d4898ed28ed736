import type { Sheet } from "./sheet.ts";

/** The machine-readable sheet, format `evenrow-sheet/1`. */
export const sheetToJson = ({ pieces }: Sheet): object => ({
  format: "evenrow-sheet/1",
  pieces: pieces.map(({ piece, needlesAtStart, rowsInAll, rows }) => ({
    piece,
    needles_at_start: needlesAtStart,
    rows_in_all: rowsInAll,
    rows,
  })),
});
