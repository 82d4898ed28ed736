import { rowOf } from "../../cloth/counted-piece.ts";
import { groundStitch, wholeWithin } from "../../cloth/gauge.ts";
import { type Bounds, type GaugeRange, gaugeRange } from "../../cloth/gauge-range.ts";
import type { Garment, Piece } from "../../garment/garment.ts";

/**
 * Rows by which a piece may become longer or shorter so that its length stays between what its outline has, less
 * `shrink`, and that with `grow`, for every row height of the garment's range; undefined where nothing asks for it.
 * A length is rows times the row height, so the highest row decides how many there may be and the lowest how few. What
 * rounding to whole rows has added or taken away counts too. There is no such change where `least` is above `most`.
 */
export function steadyChanges({ gauge, steady }: Garment, piece: Piece): Bounds | undefined {
  if (steady === undefined || piece.limitsLength !== true) return undefined;
  const planned = rowOf(topOf(piece), groundStitch(gauge));
  const { least, most } = rowsWithin(piece, gaugeRange(gauge, steady));
  return { least: least - planned, most: most - planned };
}

/** Whether the pieces that carry no motif, whose rows nothing can change, keep their length where it has to be steady. */
export const keepsPlainLengths = (garment: Garment): boolean =>
  garment.pieces
    .filter(({ name }) => !garment.placements.some(({ piece }) => piece === name))
    .every((piece) => {
      const changes = steadyChanges(garment, piece);
      return !changes || (changes.least <= 0 && changes.most >= 0);
    });

/** Whether so many rows of a piece keep its limits of length over a range of gauges. */
export function keepsLength(piece: Piece, rows: number, range: GaugeRange): boolean {
  const { least, most } = rowsWithin(piece, range);
  return piece.limitsLength !== true || (rows >= least && rows <= most);
}

function rowsWithin(piece: Piece, { rowHeightMm }: GaugeRange): Bounds {
  const mm = topOf(piece);
  return {
    least: -wholeWithin(-(mm - piece.shrinkMm) / rowHeightMm.least),
    most: wholeWithin((mm + piece.growMm) / rowHeightMm.most),
  };
}

const topOf = ({ outline }: Piece): number => outline.at(-1)!.heightMm;
