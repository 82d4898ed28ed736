import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { markersIn, stitchesToMake } from "../../../src/cord/cord.ts";

describe("cord stitches to make", () => {
  test.each([
    [168, 0.15, 194],
    [100, 0.15, 115],
    [101, 0.15, 117],
    [168, 0, 168],
    [1, 0.001, 2],
  ])("%i used and %d in reserve are %i", (used, reserve, make) => {
    expect(stitchesToMake(used, reserve)).toBe(make);
  });

  test("are never fewer than used and reserve together", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), fc.integer({ min: 0, max: 5000 }), (used, perMille) => {
        const make = stitchesToMake(used, perMille / 1000);
        expect(make * 1000).toBeGreaterThanOrEqual(used * (1000 + perMille));
        expect((make - 1) * 1000).toBeLessThan(used * (1000 + perMille));
      }),
      { seed: 11, numRuns: 300 },
    );
  });
});

describe("marker threads", () => {
  test.each([
    [194, 10, { every: 10, count: 19, after: 4 }],
    [200, 10, { every: 10, count: 19, after: 10 }],
    [10, 10, { every: 10, count: 0, after: 10 }],
    [11, 10, { every: 10, count: 1, after: 1 }],
    [3, 10, { every: 10, count: 0, after: 3 }],
  ])("of %i cord stitches, one after every %i", (cordStitches, every, markers) => {
    expect(markersIn(cordStitches, every)).toEqual(markers);
  });

  test("and the stitches between and after them add up to the cord", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        fc.integer({ min: 2, max: 100 }),
        (cordStitches, every) => {
          const { count, after } = markersIn(cordStitches, every);
          expect(count * every + after).toBe(cordStitches);
          expect(after).toBeGreaterThanOrEqual(1);
          expect(after).toBeLessThanOrEqual(every);
        },
      ),
      { seed: 12, numRuns: 300 },
    );
  });
});
