import type { CountedPiece } from "../../cloth/counted-piece.ts";
import type { Reach, Trace } from "../../motif/trace.ts";
import { type Narrowest, narrowest } from "../panel.ts";

/** Rows, counted from the motif's first, over which a growing motif reaches so far. */
export interface Extent {
  readonly fromRow: number;
  readonly toRow: number;
  readonly reach: Reach;
}

/**
 * How far each repeat of a growing motif reaches: as far as the wider of its own look and the one below it, because
 * its strands come from there. The row between two repeats belongs to both.
 *
 * @param traces one for each repeat, from the bottom up
 */
export function extentsOf(traces: readonly Trace[]): readonly Extent[] {
  let fromRow = 0;
  return traces.map((trace, index) => {
    const toRow = (index === 0 ? trace.leadRows : fromRow) + trace.repeatRows;
    const extent = { fromRow, toRow, reach: wider(trace.reach, traces[index - 1]?.reach ?? trace.reach) };
    fromRow = toRow;
    return extent;
  });
}

export const wider = (one: Reach, other: Reach): Reach => ({
  left: Math.max(one.left, other.left),
  right: Math.max(one.right, other.right),
});

/** Needles left free beside a growing motif whose middle is the piece's, where they are fewest. */
export function roomBeside(piece: CountedPiece, firstRow: number, extents: readonly Extent[]): Narrowest {
  const rooms = extents.map(({ fromRow, toRow, reach }) => {
    const edge = narrowest(piece, firstRow + fromRow, firstRow + toRow);
    return { left: edge.left - reach.left, right: edge.right - reach.right };
  });
  return {
    left: Math.min(...rooms.map(({ left }) => left)),
    right: Math.min(...rooms.map(({ right }) => right)),
  };
}
