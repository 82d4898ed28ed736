import { type CopyWork, newPiece, type PieceWork } from "./record.ts";
import { stepsOf } from "./steps.ts";

/** Which copy of a piece is at hand, counted from 1, and of how many. */
interface CopyCount {
  readonly copy: number;
  readonly make: number;
}

/** The file may have come to ask for fewer than are knitted already. */
export function copyCount({ copy = 1, sheet }: CopyWork): CopyCount {
  return { copy, make: Math.max(sheet.make ?? 1, copy) };
}

/** Every copy that was begun, the one at hand included, in their order. */
export const copiesOf = ({ copies = [], ...atHand }: PieceWork): readonly CopyWork[] =>
  [...copies, atHand].toSorted((one, other) => copyCount(one).copy - copyCount(other).copy);

/** The copy after the one at hand, at its row 0; undefined where this one is not finished, or is the last. */
export function nextCopy(piece: PieceWork): PieceWork | undefined {
  const { copy, make } = copyCount(piece);
  if (copy === make || piece.at < stepsOf(piece.sheet).length - 1) return undefined;
  const begun = copiesOf(piece).find((one) => one.copy === copy + 1);
  return atHand(begun ?? freshAfter(piece), copiesOf(piece));
}

/**
 * The copy before the one at hand, at its last row; undefined where this one has gone on from row 0, or is the first.
 * Of a copy at which nothing was done nothing is kept, so that going back undoes going on.
 */
export function copyBefore(piece: PieceWork): PieceWork | undefined {
  const copies = copiesOf(piece);
  const before = copies.find((one) => copyCount(one).copy === copyCount(piece).copy - 1);
  if (!before || piece.at > 0) return undefined;
  const { copies: _, ...left } = piece;
  const isUntouched = JSON.stringify(left) === JSON.stringify(freshAfter(before));
  return atHand(before, isUntouched ? copies.filter((one) => one.copy !== left.copy) : copies);
}

/** It begins with the sheet that the copy before was begun with: what was fitted anew for that one is that one's own. */
function freshAfter({ sheet, nextBeginsWith, fittedFrom, copy = 1 }: CopyWork): CopyWork {
  return {
    ...newPiece(nextBeginsWith ?? sheet),
    ...(fittedFrom !== undefined && { fittedFrom }),
    copy: copy + 1,
  };
}

function atHand(copy: CopyWork, all: readonly CopyWork[]): PieceWork {
  const copies = all.filter((one) => copyCount(one).copy !== copyCount(copy).copy);
  return copies.length > 0 ? { ...copy, copies } : copy;
}
