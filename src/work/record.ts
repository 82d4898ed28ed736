import type { Measured } from "../refit/progress.ts";
import type { Sheet, SheetPiece } from "../sheet/sheet.ts";
import { type Step, stepsOf } from "./steps.ts";

/** Everything that is kept of the work on one garment. Plain data: it is written to disk as it is. */
export interface WorkRecord {
  /** The garment file's text that the knitter last agreed to go on from. */
  readonly garmentText: string;
  /** Name of the piece worked at last. */
  readonly piece: string;
  /** In the order of the file; never empty. */
  readonly pieces: readonly PieceWork[];
}

/** The work on one piece: on the copy of it that is at hand, and what is kept of its others. */
export interface PieceWork extends CopyWork {
  /** The other copies that were begun, in their order; absent where none was. */
  readonly copies?: readonly CopyWork[];
}

/** The work on one copy of a piece. */
export interface CopyWork {
  /** Which of the copies it is, counted from 1; absent at the first. */
  readonly copy?: number;
  /** The sheet that is followed; it stays as it is whatever becomes of the garment file. */
  readonly sheet: SheetPiece;
  /** Index of the present step among the piece's steps. */
  readonly at: number;
  readonly notes: readonly Note[];
  /** Rows at which a mistake was marked. */
  readonly mistakes: readonly RowOfPart[];
  /** What was measured on the piece, in the order in which it was; absent where nothing was. */
  readonly measurements?: readonly Measurement[];
  /** The garment file's text that the sheet was fitted from, where it is not the record's. */
  readonly fittedFrom?: string;
  /** The sheet that the next copy begins with, where this one's rest was fitted anew. */
  readonly nextBeginsWith?: SheetPiece;
}

/** A measurement as it was taken at a row; at least one of the two is there. */
interface Measurement extends RowOfPart, Measured {
  /** Whether the rest was fitted anew by it, so that the sheet that is followed stands on it. */
  readonly isRefitted: boolean;
}

/** A row of a piece that may be worked in two parts. */
export interface RowOfPart {
  readonly row: number;
  readonly part: number;
}

interface Note extends RowOfPart {
  readonly text: string;
}

/** The work before anything is knitted: row 0 of every piece, the first one at hand. */
export const newRecord = ({ pieces }: Sheet, garmentText: string): WorkRecord => ({
  garmentText,
  piece: pieces[0]!.piece,
  pieces: pieces.map(newPiece),
});

export const newPiece = (sheet: SheetPiece): PieceWork => ({
  sheet,
  at: 0,
  notes: [],
  mistakes: [],
});

/** A piece by its name, undefined where there is none of it. */
export const pieceNamed = ({ pieces }: WorkRecord, name: string): PieceWork | undefined =>
  pieces.find(({ sheet }) => sheet.piece === name);

/** The piece at hand. */
export const currentPiece = (record: WorkRecord): PieceWork => pieceNamed(record, record.piece)!;

/** The step at which a piece stands. */
export const stepOf = ({ sheet, at }: CopyWork): Step => stepsOf(sheet)[at]!;

/** Whether anything was knitted, noted or marked on the copy at hand. */
export const isBegun = ({ at, notes, mistakes }: CopyWork): boolean =>
  at > 0 || notes.length + mistakes.length > 0;

/** The garment file's text that a piece's sheet stands on. */
export const textBehind = (record: WorkRecord, { fittedFrom }: CopyWork): string =>
  fittedFrom ?? record.garmentText;

/** Whether two sheets of a piece say the same, of however many copies. */
export const isSameSheet = (one: SheetPiece, other: SheetPiece): boolean =>
  one === other || JSON.stringify(ofOne(one)) === JSON.stringify(ofOne(other));

const ofOne = ({ make: _, ...sheet }: SheetPiece): SheetPiece => sheet;

/** A sheet of as many copies as another one is of. */
export const ofAsMany = (sheet: SheetPiece, { make }: SheetPiece): SheetPiece =>
  sheet.make === make ? sheet : { ...ofOne(sheet), ...(make !== undefined && { make }) };

export const isAtRow = (one: RowOfPart, { row, part }: RowOfPart): boolean =>
  one.row === row && one.part === part;
