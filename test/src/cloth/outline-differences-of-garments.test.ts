import { expect, test } from "vitest";
import { groundStitch } from "../../../src/cloth/gauge.ts";
import { outlineDifferences } from "../../../src/cloth/outline-differences.ts";
import { sampleGarments } from "../../support/random-garment.ts";
import { garmentOf } from "../../support/run-garment.ts";

test("of random garments, whole needles alone never cost more than a stitch", () => {
  let judged = 0;
  for (const plain of sampleGarments(150, 5)) {
    const { pieces, gauge } = garmentOf(plain);
    const { widthMm } = groundStitch(gauge);
    for (const one of pieces)
      for (const { mm, cause } of outlineDifferences(one, groundStitch(gauge))) {
        if (cause !== "whole needles") continue;
        expect(Math.abs(mm), JSON.stringify(one)).toBeLessThanOrEqual(widthMm + 1e-9);
        judged++;
      }
  }
  expect(judged).toBeGreaterThan(300);
});
