import { describe, expect, test } from "vitest";
import { countPiece } from "../../src/cloth/counted-piece.ts";
import { groundStitch } from "../../src/cloth/gauge.ts";
import { areaApart, areaTolerance } from "../support/drawn-area.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { garmentOf } from "../support/run-garment.ts";

describe("area of the counted piece", () => {
  test("is that of the drawn outline within half a needle for each row of edge", () => {
    let judged = 0;
    for (const plain of sampleGarments(200, 31)) {
      const garment = garmentOf(plain);
      const stitch = groundStitch(garment.gauge);
      for (const piece of garment.pieces) {
        const counted = countPiece(piece, stitch);
        expect(areaApart(piece, counted, stitch), JSON.stringify(plain)).toBeLessThanOrEqual(
          areaTolerance(counted),
        );
        judged++;
      }
    }
    expect(judged).toBeGreaterThan(200);
  });
});
