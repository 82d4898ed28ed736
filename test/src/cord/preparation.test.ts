import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { type CordPreparation, prepareCord } from "../../../src/cord/preparation.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

async function preparedFor(text: string): Promise<CordPreparation> {
  const result = await fitHere(soundGarment(text), { rivals: 0 });
  if (result.status !== "fits") throw new Error(`expected a fit, got: ${result.status}`);
  return prepareCord(result.fit, result.fit.placements[0]!)!;
}

const sleeve = readFileSync("samples/sleeve.yaml", "utf8");

describe("the cord of the sample sleeve", () => {
  test("is one folded cord with its reserve, its markers and a tail at either end", async () => {
    const prepared = await preparedFor(sleeve);
    expect(prepared.cords).toHaveLength(1);
    expect(prepared.cords[0]).toMatchObject({
      strands: ["left", "right"],
      folded: true,
      times: 1,
      used: 168,
      make: 194,
      passes: 388,
      markers: { every: 10, count: 19, after: 4 },
    });
    expect(prepared.tails).toEqual({ count: 2, eachMm: 200 });
  });

  test("in two columns is two cords with two tails each", async () => {
    const prepared = await preparedFor(sleeve.replace("columns: 1", "columns: 2"));
    expect(prepared.cords[0]?.times).toBe(2);
    expect(prepared.make).toBe(2 * prepared.cords[0]!.make);
    expect(prepared.tails.count).toBe(4);
  });

  test("has its markers as far apart as the file says", async () => {
    const prepared = await preparedFor(
      sleeve.replace("like: crossed cord", "like: crossed cord\n    marker: 25"),
    );
    expect(prepared.cords[0]?.markers).toEqual({ every: 25, count: 7, after: 19 });
  });
});
