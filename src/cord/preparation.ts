import { cordStitchMm } from "../cloth/gauge.ts";
import { type Fit, type FittedPlacement, lookOf } from "../fit/fit.ts";
import { type Cord, cordsOf, type Markers, markersIn, passesFor, stitchesToMake, tailMm } from "./cord.ts";

/** All the cord one placement takes. */
export interface CordPreparation {
  readonly motif: string;
  readonly piece: string;
  /** Needles each cord is knitted on. */
  readonly needles: number;
  readonly cords: readonly PreparedCord[];
  readonly tails: Tails;
  /** Sums over the cords. */
  readonly used: number;
  readonly make: number;
  readonly passes: number;
  readonly lengthMm: number;
}

/** Yarn left hanging at both ends of each cord, to fasten it with; not part of `make`. */
interface Tails {
  readonly count: number;
  readonly eachMm: number;
}

/** Cords that are alike, such as one for each column. */
export interface PreparedCord extends Cord {
  /** How many of them. */
  readonly times: number;
  /** The columns they are for, counted from 1 at the left, where other columns take other cords. */
  readonly columns?: readonly number[];
  readonly make: number;
  readonly passes: number;
  readonly lengthMm: number;
  readonly markers: Markers;
  /** Two arms of one cord, hung from its middle. */
  readonly folded: boolean;
}

/** The cord to make before a placement's piece is cast on; undefined where its motif takes none. */
export function prepareCord(fit: Fit, placement: FittedPlacement): CordPreparation | undefined {
  const { motif } = lookOf(fit, placement.motif);
  const { cord } = fit.garment.gauge;
  if (motif.kind !== "cord" || !cord) return undefined;
  const cords = cordsByColumn(placement).map((one): PreparedCord => {
    const make = stitchesToMake(one.used, motif.reserve);
    return {
      ...one,
      make,
      passes: passesFor(make),
      lengthMm: make * cordStitchMm(cord),
      markers: markersIn(make, motif.markerEvery),
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
    tails: { count: 2 * sum(() => 1), eachMm: tailMm },
    used: sum(({ used }) => used),
    make: sum(({ make }) => make),
    passes: sum(({ passes }) => passes),
    lengthMm: sum(({ lengthMm }) => lengthMm),
  };
}

/** The cords of all columns, those that are alike in one: columns differ only where an unfinished repeat ends. */
function cordsByColumn({
  sections,
  columns,
  part,
}: FittedPlacement): readonly (Cord & Pick<PreparedCord, "times" | "columns">)[] {
  const byColumn = Array.from({ length: columns }, (_, column) => cordsOf(sections, part?.columns[column]));
  return (byColumn[0] ?? []).flatMap((_, index) => {
    const own = byColumn.map((cords) => cords[index]!);
    return [...new Set(own.map(({ used }) => used))].map((used) => {
      const alike = own.flatMap((cord, column) => (cord.used === used ? [column + 1] : []));
      const { strands } = own[0]!;
      return {
        strands,
        used,
        times: alike.length,
        ...(alike.length < columns && { columns: alike }),
      };
    });
  });
}
