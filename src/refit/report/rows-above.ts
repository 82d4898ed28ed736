import type { Fit } from "../../fit/fit.ts";
import type { DoLine, WorkLine } from "../../sheet/document/document.ts";
import { pieceSection } from "../../sheet/document/piece.ts";
import { shapingPassages } from "../../sheet/shaping/shaping-passages.ts";
import type { SheetPiece } from "../../sheet/sheet.ts";

/** What is still to be worked of a piece, with a heading for each part. */
export interface BlockAbove {
  readonly title: string;
  /** What belongs to the present row itself, where something does: the row counter does not tell whether it is done. */
  readonly here?: DoLine;
  /** The shaping still to come, as knitters say it. */
  readonly shaping: readonly string[];
  readonly lines: readonly WorkLine[];
}

/**
 * What a piece's sheet says at a row and above it. Above the neck the row is one of the first half, and the second half
 * is still to be worked as a whole.
 */
export function blocksAbove(fit: Fit, piece: SheetPiece, row: number): readonly BlockAbove[] {
  const passages = shapingPassages(withoutShapingTo(piece, row));
  return pieceSection(fit, piece)
    .blocks.map(({ part, title, lines }): BlockAbove => {
      const shaping = passages.filter(({ block }) => block === part).map(({ words }) => words);
      if (part === "second half" && title) return { title, shaping, lines };
      const here = lines.find((line) => line.kind === "do" && line.row === row) as DoLine | undefined;
      return {
        title: title && isWhollyAbove(lines, row) ? title : `${title ?? "The sheet"}, above row ${row}`,
        ...(here && { here }),
        shaping,
        lines: lines.flatMap((line) => lineAbove(line, row)),
      };
    })
    .filter(({ here, lines }) => here !== undefined || lines.length > 0);
}

/** The parting of the halves stays, because it tells which half the shaping above belongs to. */
function withoutShapingTo(piece: SheetPiece, row: number): SheetPiece {
  const above = piece.rows.findIndex((one) => one.row > row);
  return {
    ...piece,
    rows: piece.rows.map((one, index) =>
      index >= above ? one : { ...one, do: one.do.filter(({ act }) => act === "hold") },
    ),
  };
}

const isWhollyAbove = ([first]: readonly WorkLine[], row: number): boolean =>
  first !== undefined && (first.kind === "do" ? first.row > row : first.toRow - first.rows >= row);

function lineAbove(line: WorkLine, row: number): readonly WorkLine[] {
  if (line.kind === "do") return line.row > row ? [line] : [];
  return line.toRow > row ? [{ ...line, rows: Math.min(line.rows, line.toRow - row) }] : [];
}
