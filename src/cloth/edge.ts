import { stepsDone } from "./spacing.ts";

/** A corner of an edge once it is counted: so many needles from the centre at so many rows. */
export interface Corner {
  readonly row: number;
  readonly needles: number;
}

/**
 * The edge the outline asks for, in needles from the centre, at every row from the first corner's to `lastRow`.
 * Between two corners the steps are spread evenly; of two corners at one row the later holds from that row on.
 */
export function wantedEdge(corners: readonly Corner[], lastRow: number): number[] {
  const first = corners[0]!;
  const edge: number[] = [];
  for (let row = first.row; row <= lastRow; row++) edge.push(wantedAt(corners, row));
  return edge;
}

function wantedAt(corners: readonly Corner[], row: number): number {
  let below = corners[0]!;
  for (const corner of corners) {
    if (corner.row > row) {
      const change = corner.needles - below.needles;
      const done = stepsDone(corner.row - below.row, Math.abs(change), row - below.row);
      return below.needles + Math.sign(change) * done;
    }
    below = corner;
  }
  return below.needles;
}

/**
 * The edge as a bed can knit it. One needle can be added or taken away at either end of a row; several only where
 * the carriage, and with it the yarn, rests (common practice, no published source), so they wait for it. At the
 * last row there is nothing left to shape: everything in work is bound off.
 *
 * A knitter may want single needles to change on even rows only, where the carriage is always on the same side; then a
 * step waits for the next such row. Of steps spread evenly the gaps stay as even as pairs of rows allow: those of the
 * trade's rule worked out over pairs of rows (machine-knitting blog, "Taking the magic out of the Magic Formula",
 * 11 Aug 2008). An edge that asks for more than one needle in two rows has several waiting, which go by the carriage.
 *
 * @param wanted edge per row, the first entry being where the edge begins
 * @param carriageHere whether the carriage rests at this edge once the entry's row is knitted
 * @param mayStep whether a single needle may change at the entry's row; at any where it is left out
 */
export function knittableEdge(
  wanted: readonly number[],
  carriageHere: (index: number) => boolean,
  mayStep: (index: number) => boolean = () => true,
): readonly number[] {
  const edge = wanted.slice(0, 1);
  for (let index = 1; index < wanted.length; index++) {
    const now = edge[index - 1]!;
    const change = wanted[index]! - now;
    const last = index === wanted.length - 1;
    const waits = last || !(Math.abs(change) > 1 ? carriageHere(index) : mayStep(index));
    edge.push(waits ? now : now + change);
  }
  return edge;
}
