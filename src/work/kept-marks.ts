import { inCentimetres } from "../report/words.ts";
import type { PieceWork, RowOfPart } from "./record.ts";

/** Everything that a knitter left at rows of a piece, a line each, from the cast-on edge upward. */
export function keptMarks(piece: PieceWork): readonly string[] {
  const marks: readonly (RowOfPart & { readonly words: string })[] = [
    ...piece.mistakes.map(({ row, part }) => ({ row, part, words: "a mistake" })),
    ...piece.notes.map(({ row, part, text }) => ({ row, part, words: `note: ${text}` })),
    ...(piece.measurements ?? []).map(({ row, part, lengthMm, widthMm, isRefitted }) => ({
      row,
      part,
      words: [
        ...(lengthMm === undefined ? [] : [`measured ${inCentimetres(lengthMm)} long`]),
        ...(widthMm === undefined ? [] : [`measured ${inCentimetres(widthMm)} wide`]),
        ...(isRefitted ? ["the rest fitted anew"] : []),
      ].join(", "),
    })),
  ];
  if (marks.length === 0) return [`${piece.sheet.piece}: no notes, mistakes or measurements.`];
  return marks
    .toSorted((one, other) => one.part - other.part || one.row - other.row)
    .map(
      ({ row, part, words }) =>
        `${piece.sheet.piece}, row ${row}${part > 1 ? " of the second half" : ""}: ${words}`,
    );
}
