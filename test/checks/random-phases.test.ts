import { describe, expect, test } from "vitest";
import { toProgram } from "../../solver/choice.ts";
import { highsEngine } from "../../solver/highs-engine.ts";
import { enumerate } from "../../src/fit/enumerate.ts";
import { formulate } from "../../src/fit/formulate.ts";
import { exhaustiveBest } from "../support/exhaustive.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { fitHere, garmentOf } from "../support/run-garment.ts";

const costTolerance = 1e-6;
const count = 70;

describe(`${count} random garments whose motifs meet marks and one another`, () => {
  const plain = sampleGarments(count, 20261126, {
    sharedPieces: false,
    phases: true,
    placements: [2, 4],
    motifs: 1,
  });

  test("cost what an exhaustive search finds, at the root, and reach the same optimum in HiGHS", async () => {
    let fitted = 0;
    let matched = 0;
    for (const file of plain) {
      const garment = garmentOf(file);
      const result = await fitHere(garment, { rivals: 1 });
      const referee = exhaustiveBest(file, { edges: edgesOf(garment) });
      const about = JSON.stringify(file);
      expect(result.status, about).toBe(referee ? "fits" : "does not fit");
      if (result.status !== "fits") continue;
      expect(Math.abs(result.fit.cost - referee!.cost), about).toBeLessThan(costTolerance);
      expect(result.bestNodes, about).toBeLessThanOrEqual(1);
      fitted++;
      if (!file.match) continue;
      matched++;
      const highs = await highsEngine(toProgram(formulate(enumerate(garment))).program, {});
      expect(highs.status, about).toBe("optimal");
      if (highs.status === "optimal")
        expect(Math.abs(highs.cost - result.fit.cost)).toBeLessThan(costTolerance);
    }
    expect(fitted).toBeGreaterThan(count / 3);
    expect(matched).toBeGreaterThan(5);
  });
});
