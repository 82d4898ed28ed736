import type { CountedPiece } from "../cloth/counted-piece.ts";

/** Every stitch of a piece, the neck opening left out. */
export function stitchesIn(piece: CountedPiece): number {
  let stitches = 0;
  for (let row = 1; row <= piece.rows; row++) {
    stitches += piece.left[row - 1]! + piece.right[row - 1]!;
    const above = piece.neck ? row - 1 - piece.neck.row : -1;
    if (piece.neck && above >= 0) stitches -= piece.neck.left[above]! + piece.neck.right[above]!;
  }
  return stitches;
}
