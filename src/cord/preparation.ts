import { cordStitchMm } from "../cloth/gauge.ts";
import { type Fit, type FittedPlacement, lookOf } from "../fit/fit.ts";
import { type Cord, cordsOf, passesFor, stitchesToMake } from "./cord.ts";

/** All the cord one placement takes. */
export interface CordPreparation {
  readonly motif: string;
  readonly piece: string;
  /** Needles each cord is knitted on. */
  readonly needles: number;
  readonly cords: readonly PreparedCord[];
  /** Sums over the cords. */
  readonly used: number;
  readonly make: number;
  readonly passes: number;
  readonly lengthMm: number;
}

/** Cords that are alike, such as one for each column. */
export interface PreparedCord extends Cord {
  /** How many of them. */
  readonly times: number;
  readonly make: number;
  readonly passes: number;
  readonly lengthMm: number;
  /** Two arms of one cord, hung from its middle. */
  readonly folded: boolean;
}

/** The cord to make before a placement's piece is cast on; undefined where its motif takes none. */
export function prepareCord(fit: Fit, placement: FittedPlacement): CordPreparation | undefined {
  const { motif } = lookOf(fit, placement.motif);
  const { cord } = fit.garment.gauge;
  if (motif.kind !== "cord" || !cord) return undefined;
  const cords = cordsOf(motif, placement.sections).map((one): PreparedCord => {
    const make = stitchesToMake(one.used, motif.reserve);
    return {
      ...one,
      times: placement.columns,
      make,
      passes: passesFor(make),
      lengthMm: make * cordStitchMm(cord),
      folded: one.strands.length > 1,
    };
  });
  const sum = (of: (one: PreparedCord) => number): number =>
    cords.reduce((all, one) => all + one.times * of(one), 0);
  return {
    motif: motif.name,
    piece: placement.piece,
    needles: cord.needles,
    cords,
    used: sum(({ used }) => used),
    make: sum(({ make }) => make),
    passes: sum(({ passes }) => passes),
    lengthMm: sum(({ lengthMm }) => lengthMm),
  };
}
