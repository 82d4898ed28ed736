import type { Motif } from "../../motif/motif.ts";
import { type Extent, type Run, walk } from "./walk.ts";

/**
 * How far a column reaches at a row of the motif. Where the motif goes over into another run, its strands come from the
 * run below for one repeat more, so the wider of the two counts there; the row between belongs to both.
 */
export function reachOver(motif: Motif, runs: readonly Run[]): (row: number) => Extent {
  const whole = walk(motif, runs);
  const points = whole.strands.flatMap((strand) => strand.points);
  const reachOf = (run: number): Extent => {
    const ends = [...points.filter((point) => point.run === run), ...whole.standing];
    return {
      from: Math.min(0, ...ends.map(({ from }) => from)),
      to: Math.max(0, ...ends.map(({ to }) => to)),
    };
  };
  const bands = runs.map(({ values }, run) => {
    const fromRow = run === 0 ? 0 : walk(motif, runs.slice(0, run)).rows;
    const repeat = walk(motif, [{ values, repeats: 1 }]).rows - walk(motif, [{ values, repeats: 0 }]).rows;
    return {
      fromRow,
      toRow: walk(motif, runs.slice(0, run + 1)).rows,
      mixedTo: fromRow + repeat,
      reach: reachOf(run),
    };
  });
  return (row) => {
    const extents = bands.flatMap(({ fromRow, toRow, mixedTo, reach }, run) => {
      if (row < fromRow || row > toRow) return [];
      return run > 0 && row <= mixedTo ? [reach, bands[run - 1]!.reach] : [reach];
    });
    return {
      from: Math.min(...extents.map(({ from }) => from)),
      to: Math.max(...extents.map(({ to }) => to)),
    };
  };
}
