import type { CountedPiece } from "../cloth/counted-piece.ts";
import type { Reach } from "../motif/trace.ts";

/** Equal columns of a motif side by side, in boundaries from the centre of the piece (0 = between L1 and R1). */
export interface Panel {
  /** Centre of each column, from left to right. */
  readonly centres: readonly number[];
  readonly leftEdge: number;
  readonly rightEdge: number;
}

/**
 * Columns stand side by side about the centre of the piece. Where that asks for half a needle (an even number of
 * columns and an odd gap), the panel stands half a needle to the left. A panel with edge stitches stands about the
 * centre as a whole, so its columns need not.
 *
 * @param gap needles between two columns
 * @param shift needles by which the panel is moved to the right
 */
export function panelOf(columns: number, gap: number, reach: Reach, shift = 0): Panel {
  const { left, right, edge } = reach;
  const apart = left + right + gap;
  const first =
    shift + (edge ? firstBesideEdge(columns * apart - gap, left, edge) : firstCentre(columns, apart));
  const centres = Array.from({ length: columns }, (_, column) => first + column * apart);
  return {
    centres,
    leftEdge: first - left - (edge?.left ?? 0),
    rightEdge: centres.at(-1)! + right + (edge?.right ?? 0),
  };
}

const firstCentre = (columns: number, apart: number): number => Math.floor((-(columns - 1) * apart) / 2);

const firstBesideEdge = (
  columnsWide: number,
  left: number,
  edge: { readonly left: number; readonly right: number },
): number => Math.floor(-(edge.left + columnsWide + edge.right) / 2) + edge.left + left;

/** Fewest needles each side of the centre at any row of a range, both ends included. */
export interface Narrowest {
  readonly left: number;
  readonly right: number;
}

export function narrowest(piece: CountedPiece, firstRow: number, lastRow: number): Narrowest {
  const known = measured.get(piece) ?? new Map<string, Narrowest>();
  measured.set(piece, known);
  const key = `${firstRow}-${lastRow}`;
  const found = known.get(key) ?? measure(piece, firstRow, lastRow);
  known.set(key, found);
  return found;
}

/** The same rows of the same piece are asked for under every reach; what is no longer used is let go with the piece. */
const measured = new WeakMap<CountedPiece, Map<string, Narrowest>>();

function measure(piece: CountedPiece, firstRow: number, lastRow: number): Narrowest {
  let left = Number.POSITIVE_INFINITY;
  let right = Number.POSITIVE_INFINITY;
  for (let row = firstRow; row <= lastRow; row++) {
    left = Math.min(left, piece.left[row]!);
    right = Math.min(right, piece.right[row]!);
  }
  return { left, right };
}

/**
 * Whether a panel keeps clear of the neck opening. At the neck's own row the last hanging is made before the
 * centre is bound off, so only the rows above it count.
 */
export function clearsNeck(piece: CountedPiece, panel: Panel, firstRow: number, lastRow: number): boolean {
  const { neck } = piece;
  if (!neck) return true;
  for (let row = Math.max(firstRow, neck.row + 1); row <= lastRow; row++) {
    const leftHalf = panel.rightEdge <= -neck.left[row - neck.row]!;
    const rightHalf = panel.leftEdge >= neck.right[row - neck.row]!;
    if (!leftHalf && !rightHalf) return false;
  }
  return true;
}
