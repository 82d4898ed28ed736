import type { SheetPiece } from "../sheet.ts";
import { type Paragraph, paragraph } from "./document.ts";

/** How a piece is begun. */
export const castOnWords = (piece: SheetPiece): readonly Paragraph[] => [
  paragraph(
    `Knit a few rows of waste yarn, then set the row counter to 0 with the carriage at the ${piece.rows[0]!.carriage}.`,
  ),
];
