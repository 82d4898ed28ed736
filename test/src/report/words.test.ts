import fc from "fast-check";
import { expect, test } from "vitest";
import { cordLength } from "../../../src/report/words.ts";

test("a length of cord is told in millimetres and rounded up, and what is whole stays as it is", () => {
  expect(cordLength(1021.1)).toBe("102.2 cm");
  expect(cordLength(1022)).toBe("102.2 cm");
  // 205 stitches of a cord with 19 over 10 cm come to 1078.947 mm.
  expect(cordLength((205 * 100) / 19)).toBe("107.9 cm");
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 5000 }), fc.integer({ min: 5, max: 60 }), (stitches, over10cm) => {
      const mm = (stitches * 100) / over10cm;
      const told = 10 * Number.parseFloat(cordLength(mm));
      expect(told).toBeGreaterThan(mm - 1e-6);
      expect(told).toBeLessThan(mm + 1);
    }),
  );
});
