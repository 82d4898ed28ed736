import { beforeAll, describe, expect, test } from "vitest";
import type { FitResult } from "../../src/fit/solve.ts";
import type { Garment } from "../../src/garment/garment.ts";
import { isForbidden, mostLoopMm } from "../../src/safety/cord-rules.ts";
import { exhaustiveBest } from "../support/exhaustive.ts";
import type { GarmentFile } from "../support/garment-file.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { fitHere, garmentOf } from "../support/run-garment.ts";

/** Costs are sums of a few products; two ways of adding them differ by far less than this. */
const costTolerance = 1e-6;

const count = 300;

interface Judged {
  readonly plain: GarmentFile;
  readonly garment: Garment;
  readonly result: FitResult;
}

const judged: Judged[] = [];

beforeAll(async () => {
  for (const plain of sampleGarments(count, 20261126, {
    sharedPieces: false,
    wearers: true,
    placements: [1, 2],
  })) {
    const garment = garmentOf(plain);
    judged.push({ plain, garment, result: await fitHere(garment, { rivals: 0 }) });
  }
});

describe(`${count} random garments that say who will wear them`, () => {
  test("cost what an exhaustive search finds that knows the wearer's rules", () => {
    for (const { plain, garment, result } of judged) {
      const referee = exhaustiveBest(plain, { edges: edgesOf(garment) });
      const told = result.status === "fits" ? result.fit.cost : undefined;
      const about = JSON.stringify(plain);
      if (referee === undefined || told === undefined) expect(told, about).toBe(referee?.cost);
      else expect(Math.abs(told - referee.cost), about).toBeLessThan(costTolerance);
    }
  });

  test("are refused, fitted otherwise and left alone often enough for the comparison to say something", async () => {
    const seen = { forbidden: 0, costlier: 0, refused: 0, alike: 0 };
    for (const { garment, result } of judged) {
      if (garment.placements.some((placement) => isForbidden(garment, placement))) seen.forbidden++;
      else if (garment.motifs.some(({ name }) => mostLoopMm(garment, name) !== undefined)) {
        const { wearer: _, ...nobody } = garment;
        const free = await fitHere(nobody, { rivals: 0 });
        if (free.status !== "fits") continue;
        if (result.status !== "fits") seen.refused++;
        else if (result.fit.cost > free.fit.cost + costTolerance) seen.costlier++;
        else seen.alike++;
      }
    }
    for (const times of Object.values(seen)) expect(times).toBeGreaterThan(10);
  });
});
