import { expect, test } from "vitest";
import { sizes } from "../../../../src/sheet/pdf/sizes.ts";

test("nothing on the sheet is smaller than 10 points, and of the rows their numbers are largest", () => {
  expect(Math.min(...Object.values(sizes))).toBeGreaterThanOrEqual(10);
  expect(sizes.row).toBeGreaterThan(Math.max(sizes.text, sizes.running, sizes.small));
});
