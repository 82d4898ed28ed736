import type { Measured } from "../refit/progress.ts";
import type { SheetPiece } from "../sheet/sheet.ts";
import { copyBefore, nextCopy } from "./copies.ts";
import {
  type CopyWork,
  currentPiece,
  isAtRow,
  isBegun,
  isSameSheet,
  newPiece,
  ofAsMany,
  type PieceWork,
  pieceNamed,
  stepOf,
  textBehind,
  type WorkRecord,
} from "./record.ts";
import { stepAt, stepsOf } from "./steps.ts";

/** Something that happened at the machine. What can be kept is one of these; a record is what they add up to. */
export type WorkEvent =
  /** The next step: a row was knitted, the second half was taken up, or the next copy of the piece begun. */
  | { readonly kind: "next" }
  | { readonly kind: "back" }
  | { readonly kind: "jump"; readonly row: number; readonly part: number }
  /** Says something of the present row in place of what was said; an empty text takes it away. */
  | { readonly kind: "note"; readonly text: string }
  /** Marks a mistake at the present row, or takes its mark away. */
  | { readonly kind: "mistake" }
  | { readonly kind: "choose"; readonly piece: string }
  /** The piece was measured at the present row; with a sheet, its rest was fitted anew and that one is followed. */
  | { readonly kind: "measure"; readonly measured: Measured; readonly sheet?: SheetPiece }
  /** From here on these sheets are followed; begun pieces that are not among them stay as they are. */
  | { readonly kind: "follow"; readonly garmentText: string; readonly sheets: readonly SheetPiece[] };

/**
 * What an event makes of a record. An event that cannot be (a row beyond the piece's end, a piece that is not there)
 * leaves the record as it is, the same object.
 */
export function applyEvent(record: WorkRecord, event: WorkEvent): WorkRecord {
  switch (event.kind) {
    case "next":
      return toCopy(record, nextCopy(currentPiece(record))) ?? movedTo(record, currentPiece(record).at + 1);
    case "back":
      return toCopy(record, copyBefore(currentPiece(record))) ?? movedTo(record, currentPiece(record).at - 1);
    case "jump":
      return movedTo(record, stepAt(currentPiece(record).sheet, event.row, event.part));
    case "note":
      return withPiece(record, (piece) => noted(piece, event.text.trim()));
    case "mistake":
      return withPiece(record, marked);
    case "measure":
      return withPiece(record, (piece) => measuredOn(piece, event));
    case "choose":
      return event.piece === record.piece || !pieceNamed(record, event.piece)
        ? record
        : { ...record, piece: event.piece };
    case "follow":
      return following(record, event);
  }
}

export const applyEvents = (record: WorkRecord, events: readonly WorkEvent[]): WorkRecord =>
  events.reduce(applyEvent, record);

const withPiece = (record: WorkRecord, change: (piece: PieceWork) => PieceWork): WorkRecord => ({
  ...record,
  pieces: record.pieces.map((piece) => (piece.sheet.piece === record.piece ? change(piece) : piece)),
});

const toCopy = (record: WorkRecord, copy: PieceWork | undefined): WorkRecord | undefined =>
  copy && withPiece(record, () => copy);

function movedTo(record: WorkRecord, at: number | undefined): WorkRecord {
  const piece = currentPiece(record);
  if (at === undefined || at === piece.at || !stepsOf(piece.sheet)[at]) return record;
  return withPiece(record, (one) => ({ ...one, at }));
}

function noted(piece: PieceWork, text: string): PieceWork {
  const { row, part } = stepOf(piece);
  const others = piece.notes.filter((note) => !isAtRow(note, { row, part }));
  return { ...piece, notes: text === "" ? others : [...others, { row, part, text }] };
}

function marked(piece: PieceWork): PieceWork {
  const { row, part } = stepOf(piece);
  const others = piece.mistakes.filter((mistake) => !isAtRow(mistake, { row, part }));
  return {
    ...piece,
    mistakes: others.length < piece.mistakes.length ? others : [...others, { row, part }],
  };
}

function measuredOn(
  piece: PieceWork,
  { measured, sheet }: Extract<WorkEvent, { kind: "measure" }>,
): PieceWork {
  const { row, part } = stepOf(piece);
  const measurement = { row, part, ...measured, isRefitted: sheet !== undefined };
  const after = { ...piece, measurements: [...(piece.measurements ?? []), measurement] };
  return sheet
    ? { ...after, sheet, at: placeIn(sheet, piece), nextBeginsWith: piece.nextBeginsWith ?? piece.sheet }
    : after;
}

function following(
  record: WorkRecord,
  { garmentText, sheets }: Extract<WorkEvent, { kind: "follow" }>,
): WorkRecord {
  const followed = sheets.map((sheet) => {
    const before = pieceNamed(record, sheet.piece);
    return before ? carriedOver(record, before, { garmentText, sheet }) : newPiece(sheet);
  });
  const left = record.pieces.filter(
    (piece) => (isBegun(piece) || piece.copies) && !sheets.some((sheet) => sheet.piece === piece.sheet.piece),
  );
  const pieces = [...followed, ...left];
  if (pieces.length === 0) return { ...record, garmentText };
  const piece = pieces.some(({ sheet }) => sheet.piece === record.piece)
    ? record.piece
    : pieces[0]!.sheet.piece;
  return { garmentText, piece, pieces };
}

/**
 * The same rows are knitted. A sheet that stays as it is stands on the text and the refits that it stood on; on
 * another one no refit was made yet. What is given for the same text was fitted anew for the copy at hand alone, and
 * other copies stay as they are.
 */
function carriedOver(
  record: WorkRecord,
  before: PieceWork,
  { garmentText, sheet }: { readonly garmentText: string; readonly sheet: SheetPiece },
): PieceWork {
  const { fittedFrom: _, nextBeginsWith, measurements, copies, ...piece } = before;
  const isSame = isSameSheet(before.sheet, sheet);
  const isOfSameText = textBehind(record, before) === garmentText;
  const nextSheet = isSame ? nextBeginsWith : isOfSameText ? (nextBeginsWith ?? before.sheet) : undefined;
  return {
    ...piece,
    sheet,
    at: placeIn(sheet, before),
    ...(isSame && keptText(record, before, garmentText)),
    ...(nextSheet && { nextBeginsWith: ofAsMany(nextSheet, sheet) }),
    ...(copies && {
      copies: copies.map((one) => ({
        ...one,
        sheet: ofAsMany(one.sheet, sheet),
        ...keptText(record, one, garmentText),
      })),
    }),
    ...(measurements && {
      measurements: isSame ? measurements : measurements.map((one) => ({ ...one, isRefitted: false })),
    }),
  };
}

/** The text that a copy's sheet stands on, where the record is to have another one. */
const keptText = (record: WorkRecord, copy: CopyWork, garmentText: string): Pick<CopyWork, "fittedFrom"> => {
  const text = textBehind(record, copy);
  return text === garmentText ? {} : { fittedFrom: text };
};

/** Where so many rows are knitted by another sheet; where it is shorter the piece stands at its end. */
function placeIn(sheet: SheetPiece, before: PieceWork): number {
  const { row, part } = stepOf(before);
  return stepAt(sheet, row, part) ?? stepAt(sheet, row, 1) ?? stepsOf(sheet).length - 1;
}
