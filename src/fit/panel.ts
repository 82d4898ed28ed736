import type { CountedPiece } from "../cloth/counted-piece.ts";
import type { Reach } from "../motif/trace.ts";

/** Equal columns of a motif side by side, in boundaries from the centre of the piece (0 = between L1 and R1). */
export interface Panel {
  /** Centre of each column, from left to right. */
  readonly centres: readonly number[];
  /** How many of them, counted from the right, are the mirror image of the others. */
  readonly mirrored: number;
  readonly leftEdge: number;
  readonly rightEdge: number;
}

/** Columns side by side, as far as they stand apart. */
export interface Columns {
  readonly columns: number;
  /** Needles between two columns. */
  readonly gap: number;
  /** Whether those right of the middle are the mirror image of those left of it; a column in the middle is not. */
  readonly mirror: boolean;
}

export const oneColumn: Columns = { columns: 1, gap: 0, mirror: false };

/**
 * Columns stand side by side about the centre of the piece. Where that asks for half a needle (an even number of
 * columns and an odd gap), the panel stands half a needle to the left. A panel with edge stitches, or with mirrored
 * columns, stands about the centre as a whole, so its columns need not.
 *
 * @param shift needles by which the panel is moved to the right
 */
export function panelOf({ columns, gap, mirror }: Columns, reach: Reach, shift = 0): Panel {
  const { left, right, edge = { left: 0, right: 0 } } = reach;
  const wide = left + right;
  const mirrored = mirror ? Math.floor(columns / 2) : 0;
  const asAWhole = reach.edge !== undefined || mirrored > 0;
  const columnsWide = columns * (wide + gap) - gap;
  const leftEdge = asAWhole
    ? Math.floor(-(edge.left + columnsWide + edge.right) / 2)
    : Math.floor((-(columns - 1) * (wide + gap)) / 2) - left;
  const first = shift + leftEdge + edge.left;
  return {
    centres: Array.from({ length: columns }, (_, column) => {
      const ownLeft = column < columns - mirrored ? left : right;
      return first + column * (wide + gap) + ownLeft;
    }),
    mirrored,
    leftEdge: shift + leftEdge,
    rightEdge: first + columnsWide + edge.right,
  };
}

/** Whether a column (from 0 at the left) is the mirror image of what its motif says. */
export const isMirrored = (
  { centres, mirrored }: Pick<Panel, "centres" | "mirrored">,
  column: number,
): boolean => column >= centres.length - mirrored;

/** Fewest needles each side of the centre at any row of a range, both ends included. */
export interface Narrowest {
  readonly left: number;
  readonly right: number;
}

export function narrowest(piece: CountedPiece, firstRow: number, lastRow: number): Narrowest {
  const key = `${firstRow}-${lastRow}`;
  const found = measured.get(piece)?.get(key);
  if (found) return found;
  if (rangesKept === mostRangesKept) {
    measured = new WeakMap();
    rangesKept = 0;
  }
  const ranges = measured.get(piece) ?? new Map<string, Narrowest>();
  measured.set(piece, ranges);
  const made = measure(piece, firstRow, lastRow);
  ranges.set(key, made);
  rangesKept += 1;
  return made;
}

/** Ranges of rows that are kept, of all pieces together: about 10 MB. A long piece may be counted in many lengths. */
const mostRangesKept = 100_000;

/** The same rows of the same piece are asked for under every reach; what is no longer used is let go with the piece. */
let measured = new WeakMap<CountedPiece, Map<string, Narrowest>>();
let rangesKept = 0;

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
