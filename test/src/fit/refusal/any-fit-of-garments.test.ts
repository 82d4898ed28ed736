import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../../../solver/simplex-engine.ts";
import { createAnyFit } from "../../../../src/fit/refusal/any-fit.ts";
import { rulesOf } from "../../../../src/fit/refusal/rules-of.ts";
import type { GarmentFile } from "../../../support/garment-file.ts";
import { lifted } from "../../../support/lifted.ts";
import { unfittingGarments } from "../../../support/random/unfitting.ts";
import { sampleGarments } from "../../../support/random-garment.ts";
import { fitHere, garmentOf } from "../../../support/run-garment.ts";

describe("whether anything fits is what solving the whole program says", () => {
  test.each<[string, readonly GarmentFile[]]>([
    [
      "where motifs share pieces, meet marks and match, and children wear them",
      sampleGarments(60, 7, { phases: true, wearers: true, mirrored: true }),
    ],
    [
      "where two motifs share a piece",
      sampleGarments(240, 8, { placements: [2, 4], motifs: 1 }).filter(shares),
    ],
    ["where limits are narrow", unfittingGarments(60, 9)],
    [
      "where pieces have to match",
      unfittingGarments(200, 10)
        .filter(({ match }) => match !== undefined)
        .flatMap((plain) => [
          plain,
          lifted(plain, ["place.0.repeats", "place.1.repeats"]),
          lifted(plain, ["place.0.margins.bottom", "place.1.margins.bottom", "motifs.plait.interval"]),
        ]),
    ],
  ])("%s", async (_, garments) => {
    let fitting = 0;
    for (const plain of garments) {
      const garment = garmentOf(plain);
      const fits = (await fitHere(garment, { rivals: 0 })).status === "fits";
      expect(await createAnyFit(garment, simplexEngine)(garment), JSON.stringify(plain)).toBe(fits);
      if (fits) fitting++;
    }
    expect(fitting).toBeGreaterThan(0);
    expect(garments.length - fitting).toBeGreaterThan(0);
  });
});

test("what was kept of earlier questions does not change an answer", async () => {
  for (const plain of unfittingGarments(25, 11)) {
    const garment = garmentOf(plain);
    const anyFit = createAnyFit(garment, simplexEngine);
    let one = garment;
    for (const rule of rulesOf(garment)) {
      one = rule.lift(one);
      expect(await anyFit(one), rule.rule).toBe(await createAnyFit(one, simplexEngine)(one));
    }
    expect(await anyFit(garment)).toBe(await createAnyFit(garment, simplexEngine)(garment));
  }
});

function shares({ place }: GarmentFile): boolean {
  return new Set(place.map(({ on }) => on)).size < place.length;
}
