import { prepareCord } from "../cord/preparation.ts";
import type { Fit } from "../fit/fit.ts";

/** One cord of a placement that is made already, against what the piece takes now. */
export interface CordBalance {
  readonly motif: string;
  /** Index among the garment's placements. */
  readonly placement: number;
  readonly strands: readonly string[];
  /** How many cords alike, one for each column. */
  readonly times: number;
  /** Cord stitches of each: made, and taken from its first hung end to its last. */
  readonly made: number;
  readonly used: number;
  /** What is left of each for its end; below 0 it is too short by so many cord stitches. */
  readonly left: number;
  /** Whether the cord is hung already, so that only what it has left can still change. */
  readonly isHung: boolean;
}

/** Whether each cord that was made lasts for the piece as it is fitted now. */
export const cordBalances = (madeFor: Fit, now: Fit, row: number): readonly CordBalance[] =>
  now.placements.flatMap((placed) => {
    const before = madeFor.placements.find(({ index }) => index === placed.index);
    const made = before && prepareCord(madeFor, before);
    const takes = prepareCord(now, placed);
    if (!made || !takes) return [];
    return takes.cords.map(({ strands, times, used }): CordBalance => {
      const cord = made.cords.find((one) => one.strands.join() === strands.join());
      const ready = cord?.make ?? 0;
      return {
        motif: placed.motif,
        placement: placed.index,
        strands,
        times,
        made: ready,
        used,
        left: ready - used,
        isHung: placed.firstRow <= row,
      };
    });
  });
