import { polygonArea } from "d3-polygon";
import type { CountedPiece } from "../../src/cloth/counted-piece.ts";
import type { Stitch } from "../../src/cloth/gauge.ts";
import type { Piece } from "../../src/garment/garment.ts";
import { stitchesIn } from "../../src/yarn/stitches.ts";

/** Area in mm^2 of the outline as it is drawn, by a reference library (d3-polygon). */
function drawnArea(piece: Piece): number {
  const side = (which: "leftMm" | "rightMm", sign: number): [number, number][] =>
    piece.outline.map((station) => [
      sign * ("widthMm" in station ? station.widthMm / 2 : station[which]),
      station.heightMm,
    ]);
  const outline = [...side("rightMm", 1), ...side("leftMm", -1).reverse()];
  const top = piece.outline.at(-1)!.heightMm;
  const neck = piece.neck.map(({ heightMm, widthMm }): [number, number] => [widthMm / 2, heightMm]);
  const lastNeck = neck.at(-1);
  const opening = lastNeck
    ? [
        ...neck,
        [lastNeck[0], top] as [number, number],
        ...[...neck, [lastNeck[0], top] as [number, number]]
          .reverse()
          .map(([x, y]): [number, number] => [-x, y]),
      ]
    : [];
  return Math.abs(polygonArea(outline)) - (opening.length > 0 ? Math.abs(polygonArea(opening)) : 0);
}

const edgeRows = (piece: CountedPiece): number =>
  2 * piece.rows + (piece.neck ? 2 * (piece.rows - piece.neck.row) : 0);

/** Several needles wait a row for the carriage; each is a whole row of that many needles. */
function waitingNeedles(piece: CountedPiece): number {
  const jumps = (edge: readonly number[]): number =>
    edge.slice(1).reduce((sum, needles, index) => {
      const step = Math.abs(needles - edge[index]!);
      return sum + (step > 1 ? 2 * step : 0);
    }, 0);
  const neck = piece.neck;
  return (
    jumps(piece.left) +
    jumps(piece.right) +
    (neck ? jumps(neck.left) + jumps(neck.right) + 2 * (neck.left[0]! + neck.right[0]!) : 0)
  );
}

/** Stitches by which the counted piece's area may differ from the drawn one's: half a needle for each row of edge. */
export function areaTolerance(counted: CountedPiece): number {
  // Heights go to the nearest row: up to half a row of the piece's whole width at its two ends.
  const ends = Math.max(...counted.left) + Math.max(...counted.right);
  return edgeRows(counted) / 2 + ends + waitingNeedles(counted);
}

/** How many stitches the counted piece's area is off the drawn one's. */
export const areaApart = (piece: Piece, counted: CountedPiece, stitch: Stitch): number =>
  Math.abs(stitchesIn(counted) - drawnArea(piece) / (stitch.widthMm * stitch.heightMm));
