import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { estimateYarn, type YarnEstimate } from "../../../src/yarn/estimate.ts";
import { stitchesIn } from "../../../src/yarn/stitches.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

async function estimated(text: string): Promise<YarnEstimate & { readonly stitches: number }> {
  const result = await fitHere(soundGarment(text), { rivals: 0 });
  if (result.status !== "fits") throw new Error(`expected a fit, got: ${result.status}`);
  const stitches = result.fit.pieces.reduce((sum, piece) => sum + stitchesIn(piece), 0);
  return { ...estimateYarn(result.fit), stitches };
}

const sleeve = readFileSync("samples/sleeve.yaml", "utf8");
const withYarn = (yarn: string): string => sleeve.replace(/yarn:\n.*\n.*\n/, yarn);

describe("the yarn of the sample sleeve", () => {
  test("follows from the gauge, with grams by the yarn's tex and a tenth of the ground for waste", async () => {
    const { ground, cord, stitches } = await estimated(sleeve);
    // 1.8404 cm a stitch: sqrt(23.1 / 6.82).
    expect(ground.byGauge.metres?.about).toBeCloseTo(stitches * Math.sqrt(23.1 / 6.82) * 0.01, 6);
    expect(ground.byGauge.grams?.about).toBeCloseTo((ground.byGauge.metres!.about * 370) / 1000, 9);
    expect(ground.extra.metres).toBeCloseTo(ground.byGauge.metres!.about / 10, 9);
    expect(ground.atHand.metres).toBeCloseTo(ground.byGauge.metres!.most + ground.extra.metres!, 9);
    expect(ground).not.toHaveProperty("byWeight");
    // 194 cord stitches of 3 x 18.404 + 2 x 4.545 mm, and two tails of 20 cm.
    expect(cord?.byGauge.metres?.about).toBeCloseTo(194 * 0.064303, 3);
    expect(cord?.extra).toEqual({ metres: 0.4, grams: 0.148 });
    expect(cord?.atHand.metres).toBeCloseTo(cord!.byGauge.metres!.most + 0.4, 9);
  });

  test("is in metres alone where no tex is known, and has bounds about the middle", async () => {
    const { ground, cord } = await estimated(withYarn(""));
    for (const need of [ground, cord!]) {
      expect(need.byGauge).not.toHaveProperty("grams");
      const { least, about, most } = need.byGauge.metres!;
      expect(least).toBeLessThan(about);
      expect(most).toBeGreaterThan(about);
    }
  });

  test("follows from weighed swatches, which are the surer and decide what to have at hand", async () => {
    const { ground, cord, stitches } = await estimated(
      withYarn(
        "yarn: { ground: { tex: 370, swatch: { stitches: 50, rows: 70, weight: 24 g } }, cord: { swatch: { stitches: 400, weight: 10 g } } }\n",
      ),
    );
    expect(ground.byWeight?.grams?.about).toBeCloseTo((24 / 3500) * stitches, 9);
    expect(ground.byWeight?.metres?.about).toBeCloseTo(((24 / 3500) * stitches * 1000) / 370, 9);
    expect(ground.atHand.grams).toBeCloseTo((24.5 / 3500) * stitches + (2.4 / 3500) * stitches, 9);
    // No tex: the cord is in grams by weight, and its tails in metres.
    expect(cord?.byWeight?.grams?.about).toBeCloseTo((10 * 194) / 400, 9);
    expect([ground.surer, cord?.surer]).toEqual(["weight", "weight"]);
    expect(cord?.extra).toEqual({ metres: 0.4 });
    expect(cord?.atHand).toEqual({ grams: (10.5 / 400) * 194 });
  });

  test("is left to the gauge where a swatch weighs too little for a kitchen scale", async () => {
    const { cord } = await estimated(withYarn("yarn: { cord: { swatch: { stitches: 40, weight: 1 g } } }\n"));
    const { least, about, most } = cord!.byWeight!.grams!;
    expect(least).toBeCloseTo(0.5 * (194 / 40), 9);
    expect(about).toBeCloseTo(194 / 40, 9);
    expect(most).toBeCloseTo(1.5 * (194 / 40), 9);
    expect(cord?.surer).toBe("gauge");
    expect(cord?.atHand.metres).toBeCloseTo(cord!.byGauge.metres!.most + 0.4, 9);
  });
});
