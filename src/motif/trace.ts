import { needlesAcross } from "../cloth/bed.ts";

/** A value for each of a motif's quantities. */
export type Values = ReadonlyMap<string, number>;

/** A motif with its quantities chosen, in needles from the panel's centre and rows. */
export interface Trace {
  readonly leadRows: number;
  readonly repeatRows: number;
  readonly reach: Reach;
  /** Strands of a cord motif, those hung earlier in a row first; empty for other kinds. */
  readonly strands: readonly StrandTrace[];
  /** Pairs of those strands that are the two arms of one cord. */
  readonly folded: readonly (readonly [string, string])[];
  /** Cables of a cable motif, from the first in the file; empty for other kinds. */
  readonly cables: readonly CableTrace[];
  /** Needles that stand out of work beside cables. */
  readonly ladders: readonly LadderTrace[];
}

/** Needles each side of a column's centre that the motif reaches. */
export interface Reach {
  readonly left: number;
  readonly right: number;
  /** Edge stitches of a band, once at each end of the whole panel; a panel with them stands centred as a whole. */
  readonly edge?: { readonly left: number; readonly right: number };
}

export interface Point {
  readonly needle: number;
  readonly row: number;
  /** Place in the order of work of its row; what is hung later lies over. */
  readonly rank: number;
  /** Cord stitches of the stretch that ends here, where they are fixed and not sought for their ease. */
  readonly count?: number;
  /** Of a crossing: the group that lies over. */
  readonly over?: "left" | "right";
}

/** Points of the three blocks; rows count from the start of the block. */
export interface BlockTrace {
  readonly name: string;
  readonly start: Point;
  readonly leadIn: readonly Point[];
  readonly repeat: readonly Point[];
  /** Whose blocks it goes on with in the next repeat; its own where that is not stated. */
  readonly next?: string;
}

export type StrandTrace = BlockTrace;

/** Here a point's `needle` is the boundary in the middle of the crossing (0 = between L1 and R1). */
export interface CableTrace extends BlockTrace {
  readonly left: number;
  readonly right: number;
}

/** A needle out of work, and the neighbour that takes its stitch; needles from the column's centre. */
export interface LadderTrace {
  readonly needle: number;
  readonly onto: number;
}

/** Needles across between two points of a strand. */
export const across = (from: Point, to: Point): number => needlesAcross(from.needle, to.needle);

/** Whether the stretch of cord that ends at one point is laid over one that ends at another, where the two cross. */
export const liesOver = (end: Point, otherEnd: Point): boolean =>
  end.row === otherEnd.row ? end.rank > otherEnd.rank : end.row > otherEnd.row;
