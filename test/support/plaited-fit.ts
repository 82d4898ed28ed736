import { cordsOf } from "../../src/cord/cord.ts";
import type { Fit, FittedPart, FittedPlacement } from "../../src/fit/fit.ts";
import type { Garment, OnHand } from "../../src/garment/garment.ts";
import { type Wedge, wedge } from "./growing-wedge.ts";

/** A placement that takes so many columns, and of one repeat more what is told for each strand. */
export interface Plaited {
  readonly columns?: number;
  readonly repeats?: number;
  readonly part?: number;
}

/** A fit made by hand: plaits on one piece, each over so many repeats with the narrowest look; only its cord is true. */
export function plaitedFit(onHand: OnHand | undefined, plaits: readonly Plaited[]): Fit {
  const made: Wedge = wedge();
  const look = made.tracks[0]!.looks[0]!;
  const { onHand: _, ...rest } = made.garment;
  const garment: Garment = { ...rest, ...(onHand && { onHand }) };
  return {
    garment,
    cost: 0,
    terms: [],
    looks: [look],
    pieces: [],
    placements: plaits.map(
      ({ columns = 1, repeats = 2, part }, index) =>
        ({
          index,
          piece: "wedge",
          motif: "plait",
          sections: [{ look, repeats, joins: [] }],
          repeats,
          columns,
          ...(part !== undefined && { part: partOf(columns, part) }),
        }) as unknown as FittedPlacement,
    ),
  };
}

const partOf = (columns: number, more: number): FittedPart => ({
  lastRow: 0,
  rows: 4 * more,
  columns: Array.from({ length: columns }, () => ({ left: more, right: more })),
});

/** Cord stitches that one column of a placement takes, without the reserve. */
export const usedIn = ({ sections, part }: FittedPlacement): number =>
  cordsOf(sections, part?.columns[0]).reduce((sum, { used }) => sum + used, 0);
