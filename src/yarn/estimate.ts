import type { CountedPiece } from "../cloth/counted-piece.ts";
import { prepareCord } from "../cord/preparation.ts";
import type { Fit } from "../fit/fit.ts";
import type { Gauge } from "../garment/garment.ts";
import { gramsOf } from "./count.ts";
import { loopLengthCm } from "./fabric-geometry.ts";

/** Yarn that a garment takes, before tails and waste. */
export interface YarnEstimate {
  readonly groundMetres: number;
  readonly groundGrams?: number;
  /** 0 where no cord is laid. */
  readonly cordMetres: number;
  readonly cordGrams?: number;
}

/**
 * Ground: stitches times the loop length of the gauge. Cord: each cord stitch is one loop on each of its needles
 * and one float back over all but one of them, at most as long as those stitches are wide. Both are derived from the
 * loop-length constants, which hold to a few percent; tails, casting on and waste are not in them.
 */
export function estimateYarn(fit: Fit): YarnEstimate {
  const { gauge, yarn } = fit.garment;
  const loopMetres = loopMetresOf(gauge);
  const groundMetres = fit.pieces.reduce((sum, piece) => sum + stitchesIn(piece) * loopMetres, 0);
  const cordMetres = fit.placements.reduce((sum, placement) => {
    const cord = prepareCord(fit, placement);
    if (!cord) return sum;
    const float = ((cord.needles - 1) * gauge.ground.overMm) / gauge.ground.stitches / 1000;
    return sum + cord.make * (cord.needles * loopMetres + float);
  }, 0);
  return {
    groundMetres,
    cordMetres,
    ...(yarn.ground && { groundGrams: gramsOf(groundMetres, yarn.ground.tex) }),
    ...(yarn.cord && { cordGrams: gramsOf(cordMetres, yarn.cord.tex) }),
  };
}

function loopMetresOf({ ground: { stitches, rows, overMm } }: Gauge): number {
  const overCm = overMm / 10;
  return loopLengthCm((stitches * rows) / overCm ** 2) / 100;
}

/** Every stitch of a piece, the neck opening left out. */
export function stitchesIn(piece: CountedPiece): number {
  let stitches = 0;
  for (let row = 1; row <= piece.rows; row++) {
    stitches += piece.left[row - 1]! + piece.right[row - 1]!;
    const above = piece.neck ? row - 1 - piece.neck.row : -1;
    if (piece.neck && above >= 0) stitches -= piece.neck.left[above]! + piece.neck.right[above]!;
  }
  return stitches;
}
