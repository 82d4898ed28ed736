import type { SheetRow } from "../sheet.ts";
import type { DoLine, KnitLine, WorkLine } from "./document.ts";
import { phrasesOf } from "./phrases.ts";
import type { RunningRow } from "./running-row.ts";

/** What the lines of one piece need to know of its motifs. */
export interface PieceWords {
  readonly columns: (motif: string) => number;
  readonly running: RunningRow;
}

/**
 * Rows in working order, the plain ones between folded into one line.
 *
 * @param fromRow rows knitted before the first of them
 */
export function workLines(
  rows: readonly SheetRow[],
  fromRow: number,
  words: PieceWords,
): readonly WorkLine[] {
  return rows.flatMap((row, index) => {
    const plain = row.row - (rows[index - 1]?.row ?? fromRow);
    return plain > 0 ? [knitLine(row, plain), doLine(row, words)] : [doLine(row, words)];
  });
}

const knitLine = ({ row, carriage }: SheetRow, rows: number): KnitLine => ({
  kind: "knit",
  rows,
  toRow: row,
  carriage,
});

const doLine = (row: SheetRow, { columns, running }: PieceWords): DoLine => ({
  kind: "do",
  row: row.row,
  carriage: row.carriage,
  phrases: phrasesOf(row.do, columns),
  running: running(row),
});
