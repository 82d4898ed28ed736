import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { prepareCord } from "../../../src/cord/preparation.ts";
import { cordToJson, needsToJson } from "../../../src/report/needs-json.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

const result = await fitHere(soundGarment(readFileSync("samples/sleeve.yaml", "utf8")), { rivals: 0 });
if (result.status !== "fits") throw new Error("the sample has to fit");
const { fit } = result;

test("a placement's cord is told in sum and one by one", () => {
  expect(cordToJson(prepareCord(fit, fit.placements[0]!)!)).toEqual({
    used: 168,
    make: 194,
    passes: 388,
    length_mm: 1021.1,
    needles: 3,
    reserve: 26,
    tails: { count: 2, each_mm: 200 },
    cords: [
      {
        strands: ["left", "right"],
        times: 1,
        used: 168,
        make: 194,
        passes: 388,
        length_mm: 1021.1,
        markers: { every: 10, count: 19, after: 4 },
      },
    ],
  });
});

test("yarn is told with its bounds, never less than it takes, and the cautions beside it", () => {
  const { yarn, cautions } = needsToJson(fit) as {
    yarn: Record<"ground" | "cord", Record<string, Record<string, Record<string, number>>>>;
    cautions: string[];
  };
  for (const need of [yarn.ground, yarn.cord]) {
    const { least, about, most } = need.by_gauge!.metres!;
    expect(least).toBeLessThan(about!);
    expect(about).toBeLessThan(most!);
    expect(need.surer).toBe("gauge");
  }
  expect(yarn.cord.extra).toEqual({ metres: 0.4, grams: 0.2 });
  expect(cautions.length).toBeGreaterThan(2);
});
