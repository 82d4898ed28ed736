import { needleCount } from "../cloth/bed.ts";
import { type CountedPiece, needlesAt } from "../cloth/counted-piece.ts";
import type { Fit } from "./fit.ts";
import { footingOf } from "./footing.ts";

/** Stitches of plain ground that would lie as wide as a piece does at a row: cables draw it in. */
export function stitchesAcross(fit: Fit, piece: CountedPiece, row: number): number {
  const lost = fit.placements
    .filter(
      ({ firstRow, lastRow, part, ...placed }) =>
        placed.piece === piece.name && firstRow <= row && row <= (part?.lastRow ?? lastRow),
    )
    .reduce((sum, { sections, columns }) => {
      const { motif, trace } = sections[0]!.look;
      return motif.kind === "cable" ? sum + columns * footingOf(trace).crossedStitches * motif.drawIn : sum;
    }, 0);
  return needleCount(needlesAt(piece, row)) - lost;
}
