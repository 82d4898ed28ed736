import { countPiece } from "../cloth/counted-piece.ts";
import { groundStitch } from "../cloth/gauge.ts";
import type { Fit } from "../fit/fit.ts";
import type { Garment } from "../garment/garment.ts";

/** A garment's pieces without any motif: what there is to draw where nothing fits. */
export function bareFit(garment: Garment): Fit {
  const stitch = groundStitch(garment.gauge);
  return {
    garment: { ...garment, placements: [], motifs: [] },
    cost: 0,
    terms: [],
    looks: [],
    placements: [],
    pieces: garment.pieces.map((piece) => countPiece(piece, stitch)),
  };
}
