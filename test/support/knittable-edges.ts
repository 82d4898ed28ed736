import { countPiece } from "../../src/cloth/counted-piece.ts";
import { groundStitch } from "../../src/cloth/gauge.ts";
import { fieldsOf, stretchOf } from "../../src/fit/field.ts";
import type { Garment } from "../../src/garment/garment.ts";
import type { ExhaustiveOptions } from "./exhaustive.ts";

/**
 * The referee measures margins against the edges that the bed can knit, so that a step which has to wait a row
 * for the carriage does not decide a verdict. Where a piece carries two placements it is straight.
 */
export function edgesOf(garment: Garment): NonNullable<ExhaustiveOptions["edges"]> {
  const fields = fieldsOf(garment);
  const edges = new Map<string, ReturnType<typeof countPiece>>();
  return (name, change, side, row) => {
    const key = `${name} ${change}`;
    const known = edges.get(key);
    const field = fields.find(({ placement }) => placement.piece === name)!;
    const piece =
      known ??
      countPiece(field.piece, groundStitch(garment.gauge), change === 0 ? [] : [stretchOf(field, change)]);
    edges.set(key, piece);
    return piece[side][row]!;
  };
}
