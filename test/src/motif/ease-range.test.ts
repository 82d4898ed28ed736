import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Bounds, GaugeRange } from "../../../src/cloth/gauge-range.ts";
import { easeBounds, spanBounds } from "../../../src/motif/ease-range.ts";

/** What the last digits of a sum may lose. */
const tiny = 1e-9;

const bounds = (least: number, most: number): fc.Arbitrary<Bounds> =>
  fc
    .record({
      least: fc.double({ min: least, max: most, noNaN: true }),
      off: fc.double({ min: 0, max: 0.3, noNaN: true }),
    })
    .map(({ least: from, off }) => ({ least: from, most: from * (1 + off) }));

const range: fc.Arbitrary<GaugeRange & { readonly cordStitchMm: Bounds }> = fc.record({
  stitchWidthMm: bounds(2, 9),
  rowHeightMm: bounds(1.5, 7),
  cordStitchMm: bounds(3, 9),
});

const segment = fc.record({
  needles: fc.integer({ min: 0, max: 12 }),
  rows: fc.integer({ min: 1, max: 12 }),
  climbs: fc.integer({ min: 0, max: 5 }),
  pickup: fc.integer({ min: 1, max: 30 }),
});

const between = ({ least, most }: Bounds, part: number): number => least + part * (most - least);

/** A path by its definition: the straight line, and over each strand two legs as steep as the strand is thick. */
function path(
  { needles, rows, climbs }: { needles: number; rows: number; climbs: number },
  widthMm: number,
  heightMm: number,
  thicknessMm: number,
): number {
  const straight = Math.sqrt((needles * widthMm) ** 2 + (rows * heightMm) ** 2);
  const leg = Math.sqrt((straight / 2) ** 2 + thicknessMm ** 2);
  return straight + climbs * (2 * leg - straight);
}

describe("the range of a segment's ease", () => {
  test("holds the ease of every gauge within, climbing or not", () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    const thick = fc.double({ min: 0, max: 12, noNaN: true });
    fc.assert(
      fc.property(segment, range, thick, part, part, part, (one, over, thicknessMm, across, up, along) => {
        const length = path(
          one,
          between(over.stitchWidthMm, across),
          between(over.rowHeightMm, up),
          thicknessMm,
        );
        const ease = (one.pickup * between(over.cordStitchMm, along)) / length - 1;
        const { least, most } = easeBounds({ ...one }, over, thicknessMm);
        expect(ease).toBeGreaterThanOrEqual(least - tiny);
        expect(ease).toBeLessThanOrEqual(most + tiny);
      }),
      { numRuns: 3000 },
    );
  });

  test("is no wider than what a fine walk along the straight line comes to", () => {
    fc.assert(
      fc.property(segment, range, fc.double({ min: 0, max: 12, noNaN: true }), (one, over, thicknessMm) => {
        const walked = Array.from({ length: 1001 }, (_, step) =>
          path(
            one,
            between(over.stitchWidthMm, step / 1000),
            between(over.rowHeightMm, step / 1000),
            thicknessMm,
          ),
        );
        const { least, most } = spanBounds(one, over, thicknessMm);
        expect(most).toBeCloseTo(Math.max(...walked), 9);
        expect(Math.min(...walked) - least).toBeGreaterThanOrEqual(-tiny);
        // Near its lowest place a path hardly changes, so a step of the walk misses it by next to nothing.
        expect(Math.min(...walked) - least).toBeLessThan(1e-4);
      }),
      { numRuns: 300 },
    );
  });

  test("is not at a corner where two thick strands are climbed over a short line", () => {
    const steep = { needles: 1, rows: 0, climbs: 2 };
    const over = { stitchWidthMm: { least: 3, most: 9 }, rowHeightMm: { least: 3, most: 3 } };
    const ends = [3, 9].map((widthMm) => path(steep, widthMm, 3, 5));
    // The line for which half of it is to a leg as 1 is to 2: 5 / sqrt(3) is half of it.
    const lowest = path(steep, 10 / Math.sqrt(3), 3, 5);
    expect(lowest).toBeLessThan(Math.min(...ends) - 0.1);
    expect(spanBounds(steep, over, 5).least).toBeCloseTo(lowest, 9);
  });
});
