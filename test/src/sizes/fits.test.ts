import { expect, test } from "vitest";
import { FITS } from "../../../src/sizes/fits.ts";

test("fits go from the closest to the widest, each between its bounds and with its source", () => {
  expect([...FITS.keys()]).toEqual(["very close", "close", "standard", "loose", "oversized"]);
  const fits = [...FITS.values()];
  for (const [index, { leastMm, mostMm, mm, source }] of fits.entries()) {
    expect(mm).toBeCloseTo((leastMm + mostMm) / 2, 9);
    expect(source).toMatch(/Craft Yarn Council/);
    if (index > 0) expect(leastMm).toBeGreaterThanOrEqual(fits[index - 1]!.mostMm);
  }
  expect(FITS.get("close")).toMatchObject({ leastMm: 0, mostMm: 0 });
  expect(FITS.get("very close")?.source).toMatch(/from memory/);
});
