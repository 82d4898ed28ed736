import type { SheetRow } from "../sheet.ts";
import type { DoLine, KnitLine, WorkLine } from "./document.ts";
import { phrasesOf } from "./phrases.ts";

/**
 * Rows in working order, the plain ones between folded into one line.
 *
 * @param fromRow rows knitted before the first of them
 * @param columns how many columns a motif has on the piece
 */
export function workLines(
  rows: readonly SheetRow[],
  fromRow: number,
  columns: (motif: string) => number,
): readonly WorkLine[] {
  return rows.flatMap((row, index) => {
    const plain = row.row - (rows[index - 1]?.row ?? fromRow);
    return plain > 0 ? [knitLine(row, plain), doLine(row, columns)] : [doLine(row, columns)];
  });
}

const knitLine = ({ row, carriage }: SheetRow, rows: number): KnitLine => ({
  kind: "knit",
  rows,
  toRow: row,
  carriage,
});

const doLine = ({ row, carriage, do: actions }: SheetRow, columns: (motif: string) => number): DoLine => ({
  kind: "do",
  row,
  carriage,
  phrases: phrasesOf(actions, columns),
});
