import type { Fit } from "../../src/fit/fit.ts";
import { buildSheet } from "../../src/sheet/build-sheet.ts";
import { sheetToJson } from "../../src/sheet/sheet-json.ts";
import type { SheetPiece } from "./sheet-piece.ts";

/** The pieces of a fit's working sheet as anyone reads them who has its JSON and nothing else. */
export const sheetPiecesOf = (fit: Fit): SheetPiece[] =>
  (JSON.parse(JSON.stringify(sheetToJson(buildSheet(fit)))) as { pieces: SheetPiece[] }).pieces;
