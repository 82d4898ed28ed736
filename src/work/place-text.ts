import { counted } from "../report/words.ts";
import { copyCount } from "./copies.ts";
import { type Outlook, outlookOf } from "./outlook.ts";
import { type CopyWork, isAtRow, type PieceWork, type RowOfPart, stepOf } from "./record.ts";
import { stepsOf } from "./steps.ts";

/** "sleeve", or "sleeve, 1 of 2" where several of it are knitted. */
export function pieceWords(piece: CopyWork): string {
  const { copy, make } = copyCount(piece);
  return make === 1 ? piece.sheet.piece : `${piece.sheet.piece}, ${copy} of ${make}`;
}

/** "row 18 of 112", and which half where the piece is worked in two. */
export function placeWords(piece: PieceWork): string {
  return `row ${stepOf(piece).row} of ${piece.sheet.rowsInAll}${halfWords(piece)}`;
}

/** Below the neck there are no halves yet. */
function halfWords(piece: PieceWork): string {
  const { row, part } = stepOf(piece);
  if (part > 1) return ", second half";
  const second = stepsOf(piece.sheet).find((step) => step.part > 1);
  return second && row >= second.row ? ", first half" : "";
}

/** What comes after the present row. */
export function nextWords(piece: PieceWork, { next, rowsToNext }: Outlook): string {
  if (!next) return endWords(piece);
  const what = next.phrases.join("; ");
  return rowsToNext === 0
    ? `then, back at row ${next.row}: ${what}`
    : `in ${counted(rowsToNext, "row")}, at row ${next.row} (carriage ${next.carriage}): ${what}`;
}

/** Said at the end of a piece, of which more may be to knit. */
function endWords(piece: PieceWork): string {
  const { copy, make } = copyCount(piece);
  if (make === 1) return "the piece is finished";
  if (copy === make) return `${copy} of ${make} is finished, and with it the piece`;
  const hasCord = piece.sheet.rows.some((row) => row.do.some(({ act }) => act === "hang"));
  return (
    `${copy} of ${make} is finished; the next step begins ${copy + 1} of ${make} at row 0, as this one was begun: ` +
    `${hasCord ? "with its cord made, " : ""}waste yarn, the row counter at 0`
  );
}

/** What to do now as one line each: the row's actions, or how many plain rows come. */
export function nowWords({ now, next, rowsToNext }: Outlook): readonly string[] {
  if (now.phrases.length > 0) return now.phrases;
  return next ? [`knit ${counted(rowsToNext, "row")}, to row ${next.row}`] : [];
}

export const noteAt = (piece: PieceWork, at: RowOfPart): string | undefined =>
  piece.notes.find((note) => isAtRow(note, at))?.text;

export const hasMistakeAt = (piece: PieceWork, at: RowOfPart): boolean =>
  piece.mistakes.some((mistake) => isAtRow(mistake, at));

/** Where a piece stands and what to do now, a fact a line: for scripts, screen readers and paper. */
export function placeLines(piece: PieceWork): readonly string[] {
  const outlook = outlookOf(piece);
  const { now, rowsLeft } = outlook;
  const note = noteAt(piece, now);
  return [
    `${pieceWords(piece)}: ${placeWords(piece)}, carriage at the ${now.carriage}, ${counted(rowsLeft, "row")} left.`,
    ...(outlook.next || now.phrases.length > 0 ? [`Now: ${nowWords(outlook).join("; ")}.`] : []),
    ...(now.phrases.length > 0 || !outlook.next ? [`Next: ${nextWords(piece, outlook)}.`] : []),
    ...(now.phrases.length === 0 && outlook.next ? [`Then: ${outlook.next.phrases.join("; ")}.`] : []),
    ...(hasMistakeAt(piece, now) ? ["A mistake is marked at this row."] : []),
    ...(note === undefined ? [] : [`Note: ${note}`]),
  ];
}
