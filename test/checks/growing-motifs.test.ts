import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { prepareCord } from "../../src/cord/preparation.ts";
import type { Fit } from "../../src/fit/fit.ts";
import type { FitResult } from "../../src/fit/solve.ts";
import type { Garment } from "../../src/garment/garment.ts";
import { knit } from "../support/bed-simulator.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { growingArbitrary } from "../support/random/growing.ts";
import { cheapestGrowth } from "../support/referee/growing.ts";
import { fitHere, garmentOf } from "../support/run-garment.ts";
import { sheetPiecesOf } from "../support/sheet-of.ts";

const count = 150;
const costTolerance = 1e-6;
const drawn = fc.sample(growingArbitrary(), { numRuns: count, seed: 20261127 });

const judged: { readonly garment: Garment; readonly result: FitResult; readonly index: number }[] = [];

beforeAll(async () => {
  for (const [index, { garment: plain }] of drawn.entries()) {
    const garment = garmentOf(plain);
    judged.push({ garment, index, result: await fitHere(garment, { rivals: 2 }) });
  }
});

const fits = (): { readonly garment: Garment; readonly fit: Fit; readonly rivals: readonly Fit[] }[] =>
  judged.flatMap(({ garment, result }) =>
    result.status === "fits" ? [{ garment, fit: result.fit, rivals: result.rivals }] : [],
  );

describe(`${count} random pieces whose motif follows their taper`, () => {
  test("cost what trying every way through the spreads finds, and fit where that fits", () => {
    for (const { garment, result, index } of judged) {
      const { garment: plain, motif } = drawn[index]!;
      const referee = cheapestGrowth(plain, motif, edgesOf(garment));
      const about = JSON.stringify(plain);
      expect(result.status, about).toBe(referee === undefined ? "does not fit" : "fits");
      if (result.status !== "fits") continue;
      expect(Math.abs(result.fit.cost - referee!), about).toBeLessThan(costTolerance);
      expect(result.bestNodes, about).toBeLessThanOrEqual(1);
    }
    expect(fits().length).toBeGreaterThan(count / 2);
  });

  test("do grow: many change their spread on the way, and never by more than they may", () => {
    const changing = fits().filter(({ fit }) => fit.placements[0]!.sections.length > 1);
    expect(changing.length).toBeGreaterThan(count / 6);
    for (const { garment, fit } of changing) {
      const { change } = garment.motifs[0]!.quantities.find(({ name }) => name === "spread")!;
      const spreads = fit.placements[0]!.sections.map(({ look }) => look.values.get("spread")!);
      for (const [index, spread] of spreads.slice(1).entries())
        expect(Math.abs(spread - spreads[index]!)).toBeLessThanOrEqual(change!);
    }
  });

  test("are knitted from their sheets alone, rivals too, with as much cord as is prepared", () => {
    for (const { garment, fit, rivals } of fits())
      for (const one of [fit, ...rivals]) {
        const sheetPieces = sheetPiecesOf(one);
        const report = knit(sheetPieces[0]!, { bedNeedles: garment.bed.needles, carriage: "right" });
        expect(report.violations).toEqual([]);
        expect(report.rows).toBe(one.pieces[0]!.rows);
        expect(report.cordStitches).toBe(prepareCord(one, one.placements[0]!)!.used);
      }
  });

  test("have rivals that cost no less than the best, each different from every other", () => {
    for (const { fit, rivals } of fits()) {
      const told = [fit, ...rivals].map((one) =>
        JSON.stringify([
          one.placements[0]!.repeats,
          one.placements[0]!.change,
          one.placements[0]!.sections.map(({ look, repeats }) => [[...look.values], repeats]),
        ]),
      );
      expect(new Set(told).size).toBe(told.length);
      for (const rival of rivals) expect(rival.cost).toBeGreaterThanOrEqual(fit.cost - costTolerance);
    }
  });
});
