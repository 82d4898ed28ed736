import { describe, expect, test } from "vitest";
import { groundStitch, nearest } from "../../src/cloth/gauge.ts";
import { adviceOn, cordMiddleMm, fewest } from "../../src/swatch/advice.ts";
import { pooled } from "../../src/swatch/pool.ts";
import { swatchGauge } from "../../src/swatch/swatch-gauge.ts";

// A published tutorial for machine knitters: 100 stitches measure 32.5 cm and 100 rows 15 cm; it prints 31 x 67, and
// 30.76 and 66.6 before rounding (cut off, where 30.77 and 66.67 are right).
test("100 stitches on 32.5 cm and 100 rows on 15 cm are 31 x 67", () => {
  const [stitches, rows] = [pooled([{ count: 100, mm: 325 }]), pooled([{ count: 100, mm: 150 }])];
  expect(Math.abs(stitches.perMm * 100 - 30.77)).toBeLessThan(0.02);
  expect(Math.abs(rows.perMm * 100 - 66.67)).toBeLessThan(0.02);
  expect([nearest(stitches.perMm * 100), nearest(rows.perMm * 100)]).toEqual([31, 67]);
});

// A published course: 22 stitches to 10 cm and a width of 40 cm are 88 stitches.
test("22 stitches to 10 cm are 88 over 40 cm", () => {
  const { perMm } = pooled([{ count: 22, mm: 100 }]);
  expect(nearest(perMm * 400)).toBe(88);
  expect(nearest(400 / groundStitch({ ground: { stitches: 22, rows: 31, overMm: 100 } }).widthMm)).toBe(88);
});

// A published guide to swatches by class of machine marks needle 11, 16 or 21 on either side of the centre and contrast
// rows 30 or 40 apart; the stitches between two marks at needle n are 2 (n - 1).
describe("the published lay-outs", () => {
  const layouts = [
    { bed: "bulky", mark: 11, stitches: 20, rows: 30, stitchMm: 7 },
    { bed: "middling", mark: 16, stitches: 30, rows: 40, stitchMm: 5 },
    { bed: "standard", mark: 21, stitches: 40, rows: 40, stitchMm: 3.5 },
  ];

  test.each(layouts)("$bed: large enough", ({ mark, stitches, rows, stitchMm }) => {
    expect(2 * (mark - 1)).toBe(stitches);
    const gauge = swatchGauge([
      {
        of: "ground",
        washed: true,
        stitches: { count: stitches, mm: stitches * stitchMm },
        rows: { count: rows, mm: rows * stitchMm * 0.7 },
      },
    ]);
    expect(adviceOn(gauge).filter(({ severity }) => severity === "warning")).toEqual([]);
  });

  test("the coarsest is the least that is asked for", () => {
    expect(fewest).toEqual({ stitches: 20, rows: 30 });
  });
});

// A published article on edgings of knitted cord: knit 6 in, count the rows of the middle 4 in, unstretched.
test("a cord is counted over 4 in of its middle", () => {
  expect(cordMiddleMm).toBeCloseTo(101.6, 9);
});
