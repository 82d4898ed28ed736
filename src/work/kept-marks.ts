import { inCentimetres } from "../report/words.ts";
import { copiesOf, copyCount } from "./copies.ts";
import { pieceWords } from "./place-text.ts";
import type { CopyWork, PieceWork, RowOfPart } from "./record.ts";

/** Everything that a knitter left at rows of a piece, a line each, copy by copy and from the cast-on edge upward. */
export function keptMarks(piece: PieceWork): readonly string[] {
  const atHand = copyCount(piece).copy;
  return copiesOf(piece).flatMap((one) => {
    const marks = marksOf(one);
    return marks.length > 0 || copyCount(one).copy !== atHand
      ? marks
      : [`${pieceWords(one)}: no notes, mistakes or measurements.`];
  });
}

function marksOf(piece: CopyWork): readonly string[] {
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
  return marks
    .toSorted((one, other) => one.part - other.part || one.row - other.row)
    .map(
      ({ row, part, words }) =>
        `${pieceWords(piece)}, row ${row}${part > 1 ? " of the second half" : ""}: ${words}`,
    );
}
