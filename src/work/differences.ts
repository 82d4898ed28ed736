import { listed } from "../report/words.ts";
import type { SheetPiece } from "../sheet/sheet.ts";
import type { WorkEvent } from "./events.ts";
import { isBegun, ofAsMany, type PieceWork, pieceNamed, type WorkRecord } from "./record.ts";
import { type Step, stepsOf } from "./steps.ts";

/** How a piece's new sheet differs from the one that is followed. */
export interface SheetDifference {
  readonly piece: string;
  /** Whether everything up to the present row is the same, so that the new sheet can be gone over to as it is. */
  readonly isSameSoFar: boolean;
  /** One sentence each, for the knitter. */
  readonly words: readonly string[];
}

/** The garment file gives another sheet than the one that is followed, and the knitter is to be asked. */
export interface SheetChange {
  readonly differences: readonly SheetDifference[];
  /** Goes on with the sheets that were begun. */
  readonly keep: WorkEvent;
  /** Takes the new ones. */
  readonly take: WorkEvent;
}

/** What differs for the begun pieces, piece by piece; nothing where the knitter need not be asked. */
export const differencesOf = (
  record: WorkRecord,
  sheets: readonly SheetPiece[],
): readonly SheetDifference[] =>
  record.pieces.filter(isBegun).flatMap((piece) => {
    const now = sheets.find((sheet) => sheet.piece === piece.sheet.piece);
    const difference = now ? differenceOf(piece, now) : withoutSheet(piece);
    return difference ? [difference] : [];
  });

/** The sheets to follow where what was begun goes on as it is: new ones for the pieces that are not begun. */
export const sheetsToKeep = (record: WorkRecord, sheets: readonly SheetPiece[]): readonly SheetPiece[] =>
  sheets.map((sheet) => {
    const piece = pieceNamed(record, sheet.piece);
    return piece && isBegun(piece) ? ofAsMany(piece.sheet, sheet) : sheet;
  });

function withoutSheet({ sheet }: PieceWork): SheetDifference {
  const { piece } = sheet;
  return { piece, isSameSoFar: true, words: [`The file has no piece called ${piece} any more.`] };
}

function differenceOf(piece: PieceWork, now: SheetPiece): SheetDifference | undefined {
  const [before, after] = [stepsOf(piece.sheet), stepsOf(now)];
  const first = firstDifference(before, after);
  if (first === undefined && piece.sheet.rowsInAll === now.rowsInAll) return undefined;
  const isSameSoFar = first === undefined || first > piece.at;
  const [began, fresh] = [piece.sheet.rowsInAll, now.rowsInAll];
  return {
    piece: now.piece,
    isSameSoFar,
    words: [
      began === fresh ? `Rows in all: ${began}, as before.` : `Rows in all: ${fresh} instead of ${began}.`,
      ...(first === undefined ? [] : firstWords(before[first], after[first])),
      isSameSoFar ? "What you have done so far is the same in both." : doneWords(before, after, piece.at),
    ],
  };
}

function firstDifference(before: readonly Step[], after: readonly Step[]): number | undefined {
  const most = Math.max(before.length, after.length);
  for (let index = 0; index < most; index++) if (!isSameStep(before[index], after[index])) return index;
  return undefined;
}

const isSameStep = (one: Step | undefined, other: Step | undefined): boolean =>
  one !== undefined &&
  other !== undefined &&
  one.row === other.row &&
  one.part === other.part &&
  one.carriage === other.carriage &&
  one.phrases.join("\n") === other.phrases.join("\n");

function firstWords(before: Step | undefined, after: Step | undefined): readonly string[] {
  const row = (before ?? after)!;
  const half = row.part > 1 ? " of the second half" : "";
  return [
    `The first row that differs is row ${row.row}${half}. Your sheet: ${toDo(before)}. New sheet: ${toDo(after)}.`,
  ];
}

function toDo(step: Step | undefined): string {
  if (!step) return "the piece has ended";
  return step.phrases.length === 0 ? "nothing to do there" : step.phrases.join("; ");
}

/** Rows named at most, so that the words stay on the screen. */
const mostRowsNamed = 6;

function doneWords(before: readonly Step[], after: readonly Step[], at: number): string {
  const rows = before.slice(0, at + 1).filter((step, index) => !isSameStep(step, after[index]));
  const named = rows.slice(0, mostRowsNamed).map(({ row }) => String(row));
  const more = rows.length - named.length;
  const all = more > 0 ? [...named, `${more} more`] : named;
  return `Already done, and otherwise in the new sheet: ${all.length === 1 ? "row" : "rows"} ${listed(all)}.`;
}
