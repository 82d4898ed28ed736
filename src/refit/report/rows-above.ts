import type { Fit } from "../../fit/fit.ts";
import type { WorkLine } from "../../sheet/document/document.ts";
import { pieceSection } from "../../sheet/document/piece.ts";
import type { SheetPiece } from "../../sheet/sheet.ts";

/** What is still to be worked of a piece, with a heading for each part. */
export interface BlockAbove {
  readonly title: string;
  readonly lines: readonly WorkLine[];
}

/**
 * The lines of a piece's sheet above a row. Above the neck the row is one of the first half, and the second half is
 * still to be worked as a whole.
 */
export const blocksAbove = (fit: Fit, piece: SheetPiece, row: number): readonly BlockAbove[] =>
  pieceSection(fit, piece)
    .blocks.map(({ part, title, lines }) => ({
      title: part === "second half" && title ? title : `${title ?? "The sheet"}, above row ${row}`,
      lines: part === "second half" ? lines : lines.flatMap((line) => lineAbove(line, row)),
    }))
    .filter(({ lines }) => lines.length > 0);

function lineAbove(line: WorkLine, row: number): readonly WorkLine[] {
  if (line.kind === "do") return line.row > row ? [line] : [];
  return line.toRow > row ? [{ ...line, rows: Math.min(line.rows, line.toRow - row) }] : [];
}
