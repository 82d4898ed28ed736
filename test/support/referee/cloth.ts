import type { GarmentFile, PieceEntry, SideName } from "../garment-file.ts";
import { fraction, lengthMm } from "./entries.ts";

/** One stitch across, one row up, one cord stitch along, each in millimetres. */
export interface Cloth {
  readonly stitchMm: number;
  readonly rowMm: number;
  readonly cordStitchMm: number | undefined;
  /** The cloth at each corner of what the swatch leaves open; none where a fit need not hold for them. */
  readonly corners?: readonly Cloth[];
}

export function clothOf(garment: GarmentFile): Cloth {
  const { cord } = garment.gauge;
  if (cord?.thickness !== undefined) throw new Error("the referee does not judge cords with a thickness");
  const corners = cornersOf(garment);
  return { ...clothWith(garment.gauge, 0, 0, 0), ...(corners.length > 0 && { corners }) };
}

/** The cloth where every count is more than it was told by such a part of itself. */
function clothWith({ ground, cord }: GarmentFile["gauge"], across: number, up: number, along: number): Cloth {
  return {
    stitchMm: lengthMm(ground.over) / (ground.stitches * (1 + across)),
    rowMm: lengthMm(ground.over) / (ground.rows * (1 + up)),
    cordStitchMm: cord && lengthMm(cord.over) / (cord.stitches * (1 + along)),
  };
}

function cornersOf({ gauge, steady }: GarmentFile): Cloth[] {
  if (steady === undefined || steady === false) return [];
  const { ground, cord } = gauge;
  const share = steady === true ? 1 : fraction(steady);
  const off = (count: number, within: string | undefined): number =>
    share * (within === undefined ? 0.25 / count : fraction(within));
  const either = (one: number): readonly number[] => [-one, one];
  return either(off(ground.stitches, ground.within)).flatMap((across) =>
    either(off(ground.rows, ground.within)).flatMap((up) =>
      either(cord ? off(cord.stitches, cord.within) : 0).map((along) => clothWith(gauge, across, up, along)),
    ),
  );
}

/** Whether so many rows of a piece keep its stated limits of length at every corner. */
export const holdsLength = (piece: PieceEntry, rows: number, { corners = [] }: Cloth): boolean =>
  (piece.grow === undefined && piece.shrink === undefined) ||
  corners.every(({ rowMm }) => {
    const longer = rows * rowMm - lengthMm(piece.outline.at(-1)!.height);
    return (
      longer <= lengthMm(piece.grow ?? "0 mm") + 1e-6 && longer >= -lengthMm(piece.shrink ?? "0 mm") - 1e-6
    );
  });

/** A part of a piece, from row `from` to row `to` of the unchanged piece, made `change` rows longer. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly change: number;
}

export const rowOf = (height: string, cloth: Cloth): number => Math.round(lengthMm(height) / cloth.rowMm);

/** Most rows that a stated `grow` or `shrink` gives; the little above is for lengths that are whole rows. */
export const wholeRows = (length: string | undefined, cloth: Cloth): number =>
  Math.floor(lengthMm(length ?? "0 mm") / cloth.rowMm + 1e-9);

/** The row that a mark stands at in the unchanged piece; throws for a mark that is not there. */
export function markRow(piece: PieceEntry, mark: string, cloth: Cloth): number {
  if (mark === "cast-on") return 0;
  if (mark === "bind-off") return rowOf(piece.outline.at(-1)!.height, cloth);
  const height = mark === "neck" ? piece.neck?.[0]?.height : piece.marks?.[mark];
  if (height === undefined) throw new Error(`there is no mark "${mark}"`);
  return rowOf(height, cloth);
}

/** Where a row of the unchanged piece comes to lie once parts of it are stretched. */
export function stretchedRow(row: number, stretches: readonly Stretch[]): number {
  let moved = row;
  for (const { from, to, change } of stretches) {
    if (row >= to) moved += change;
    else if (row > from) {
      const above = row - from;
      moved += Math.round((above * (to - from + change)) / (to - from)) - above;
    }
  }
  return moved;
}

interface Corner {
  readonly row: number;
  readonly needles: number;
}

/** Needles between the centre line and one side's edge at a row, steps spread evenly between stations. */
export function wantedEdge(
  piece: PieceEntry,
  cloth: Cloth,
  stretches: readonly Stretch[],
  side: SideName,
): (row: number) => number {
  const corners = piece.outline.map((station) => ({
    row: stretchedRow(rowOf(station.height, cloth), stretches),
    needles:
      "width" in station
        ? Math.round(lengthMm(station.width) / cloth.stitchMm / 2)
        : Math.round(lengthMm(station[side]) / cloth.stitchMm),
  }));
  return (row) => between(corners, row);
}

/** Needles between the centre line and the neck's edge at a row; undefined up to the row it opens at. */
export function neckEdge(
  piece: PieceEntry,
  cloth: Cloth,
  stretches: readonly Stretch[],
): (row: number) => number | undefined {
  const corners = (piece.neck ?? []).map(({ height, width }) => ({
    row: stretchedRow(rowOf(height, cloth), stretches),
    needles: Math.round(lengthMm(width) / cloth.stitchMm / 2),
  }));
  const opens = corners[0]?.row ?? Number.POSITIVE_INFINITY;
  return (row) => (row > opens ? between(corners, row) : undefined);
}

function between(corners: readonly Corner[], row: number): number {
  const below = corners.findLast((corner) => corner.row <= row);
  const above = corners.find((corner) => corner.row > row);
  if (!below) throw new Error(`row ${row} lies below the outline`);
  if (!above) return below.needles;
  const steps = Math.abs(above.needles - below.needles);
  const done = Math.floor((steps * (row - below.row)) / (above.row - below.row) + 0.5);
  return below.needles + Math.sign(above.needles - below.needles) * done;
}
