import { countPiece } from "../../src/cloth/counted-piece.ts";
import { groundStitch } from "../../src/cloth/gauge.ts";
import type { Garment } from "../../src/garment/garment.ts";
import type { Stretch } from "./referee/cloth.ts";

/** Stitches of one piece, stretched so and with so many needles more at each side. */
export type KnittedStitches = (piece: string, stretches: readonly Stretch[], extraNeedles: number) => number;

/** The referee takes the pieces as the bed can knit them, and counts their stitches needle by needle. */
export function knittedStitchesOf(garment: Garment): KnittedStitches {
  const known = new Map<string, number>();
  return (name, stretches, extraNeedles) => {
    const changed = stretches.filter(({ change }) => change !== 0);
    const key = JSON.stringify([name, changed, extraNeedles]);
    if (!known.has(key)) {
      const { rows, left, right, neck } = countPiece(
        garment.pieces.find((piece) => piece.name === name)!,
        groundStitch(garment.gauge),
        changed.map(({ from, to, change }) => ({ fromRow: from, toRow: to, change })),
        extraNeedles,
      );
      let stitches = 0;
      for (let row = 0; row < rows; row++)
        for (let needle = -left[row]!; needle < right[row]!; needle++) {
          const isOpen =
            neck &&
            row >= neck.row &&
            needle >= -neck.left[row - neck.row]! &&
            needle < neck.right[row - neck.row]!;
          if (!isOpen) stitches++;
        }
      known.set(key, stitches);
    }
    return known.get(key)!;
  };
}
