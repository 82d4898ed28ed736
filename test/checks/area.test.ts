import { polygonArea } from "d3-polygon";
import { describe, expect, test } from "vitest";
import { type CountedPiece, countPiece } from "../../src/cloth/counted-piece.ts";
import { groundStitch } from "../../src/cloth/gauge.ts";
import type { Piece } from "../../src/garment/garment.ts";
import { stitchesIn } from "../../src/yarn/stitches.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { garmentOf } from "../support/run-garment.ts";

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

describe("area of the counted piece", () => {
  test("is that of the drawn outline within half a needle for each row of edge", () => {
    let judged = 0;
    for (const plain of sampleGarments(200, 31)) {
      const garment = garmentOf(plain);
      const stitch = groundStitch(garment.gauge);
      for (const piece of garment.pieces) {
        const counted = countPiece(piece, stitch);
        const cell = stitch.widthMm * stitch.heightMm;
        const apart = Math.abs(stitchesIn(counted) - drawnArea(piece) / cell);
        // Heights go to the nearest row: up to half a row of the piece's whole width at its two ends.
        const ends = Math.max(...counted.left) + Math.max(...counted.right);
        expect(apart, JSON.stringify(plain)).toBeLessThanOrEqual(
          edgeRows(counted) / 2 + ends + waitingNeedles(counted),
        );
        judged++;
      }
    }
    expect(judged).toBeGreaterThan(200);
  });
});
