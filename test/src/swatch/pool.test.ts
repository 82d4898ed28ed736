import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { countFor, misreading, pooled } from "../../../src/swatch/pool.ts";

const counts = fc.integer({ min: 5, max: 200 });
const stitchMm = fc.double({ min: 2, max: 12, noNaN: true });
const seeded = { seed: 4406, numRuns: 300 };

describe("pooled swatches", () => {
  test("are read as one long one, and the range takes in each of them", () => {
    const one = pooled([
      { count: 20, mm: 90 },
      { count: 30, mm: 142 },
    ]);
    expect(one.perMm).toBeCloseTo(50 / 232, 12);
    expect(one.spread).toBeCloseTo(20 / 90 / (50 / 232) - 1, 12);
    expect(one.within).toBe(one.spread);
    expect(one.most.count).toBe(30);
  });

  test("that are alike change nothing but how sure the gauge is", () => {
    fc.assert(
      fc.property(counts, stitchMm, (count, width) => {
        const swatch = { count, mm: count * width };
        const [alone, twice] = [pooled([swatch]), pooled([swatch, swatch])];
        expect(twice.perMm).toBeCloseTo(alone.perMm, 12);
        expect(twice.spread).toBe(0);
        expect(twice.within).toBeCloseTo(alone.within / Math.SQRT2, 12);
      }),
      seeded,
    );
  });

  test("of more stitches are never less sure", () => {
    fc.assert(
      fc.property(counts, counts, stitchMm, (count, more, width) => {
        const at = (stitches: number): number => misreading({ count: stitches, mm: stitches * width });
        expect(at(count + more)).toBeLessThan(at(count));
      }),
      seeded,
    );
  });

  test("are known as well as asked for from so many stitches on, in tens", () => {
    fc.assert(
      fc.property(stitchMm, fc.double({ min: 0.002, max: 0.05, noNaN: true }), (width, within) => {
        const count = countFor(1 / width, within);
        expect(misreading({ count, mm: count * width })).toBeLessThanOrEqual(within * (1 + 1e-9));
        const fewer = count - 10;
        if (fewer > 0)
          expect(misreading({ count: fewer, mm: fewer * width })).toBeGreaterThan(within * (1 - 1e-9));
      }),
      seeded,
    );
  });
});
