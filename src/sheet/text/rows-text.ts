import { counted } from "../../report/words.ts";
import { wrap } from "../../report/wrap.ts";
import type { SheetPiece, SheetRow } from "../sheet.ts";
import { phrasesOf } from "./phrases.ts";

/** One line of what is done, or of plain knitting between. */
export type WorkLine =
  | { readonly kind: "knit"; readonly rows: number; readonly toRow: number; readonly carriage: string }
  | {
      readonly kind: "do";
      readonly row: number;
      readonly carriage: string;
      readonly phrases: readonly string[];
    };

/** A piece's rows in working order, plain ones folded into one line. */
export function workLines(piece: SheetPiece, columns: (motif: string) => number): readonly WorkLine[] {
  return piece.rows.flatMap((row, index) => {
    const before = piece.rows[index - 1];
    const plain = before ? row.row - before.row : 0;
    const knit: WorkLine[] =
      plain > 0 ? [{ kind: "knit", rows: plain, toRow: row.row, carriage: row.carriage }] : [];
    return [...knit, doLine(row, columns)];
  });
}

const doLine = (row: SheetRow, columns: (motif: string) => number): WorkLine => ({
  kind: "do",
  row: row.row,
  carriage: row.carriage,
  phrases: phrasesOf(row.do, columns),
});

/** Those lines as text of at most `width` characters. */
export function rowsText(lines: readonly WorkLine[], width: number): readonly string[] {
  const digits = Math.max(...lines.map((line) => String(line.kind === "do" ? line.row : line.toRow).length));
  return lines.flatMap((line) =>
    line.kind === "knit"
      ? [
          `${" ".repeat(digits + 6)}knit ${counted(line.rows, "row")}, to row ${line.toRow}, carriage ${line.carriage}`,
        ]
      : line.phrases.flatMap((phrase, index) => {
          const head = index === 0 ? `row ${String(line.row).padStart(digits)}  ` : " ".repeat(digits + 6);
          return wrap(`${head}${phrase}`, width, digits + 8);
        }),
  );
}
