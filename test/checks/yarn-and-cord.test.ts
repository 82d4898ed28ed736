import { describe, expect, test } from "vitest";
import { passesFor } from "../../src/cord/cord.ts";
import type { GroundGauge } from "../../src/garment/garment.ts";
import { cordStitchMetres } from "../../src/yarn/cord-stitch.ts";
import { gramsOf } from "../../src/yarn/count.ts";
import { loopMetres } from "../../src/yarn/loop-length.ts";
import { gramsByWeight } from "../../src/yarn/weighed.ts";

const swatch = (stitches: number, rows: number): GroundGauge => ({ stitches, rows, overMm: 100 });

describe("yarn by the loop-length constants", () => {
  // Derived: 28 x 40 over 10 cm are 112 000 stitches in a square metre, of 1.436 cm each; in 400 tex 643 g, which is
  // what a textile handbook's formula gives for S 11.2 /cm^2 and l 14.36 mm: 11.2 x 14.36 x 400 / 100.
  test("a square metre at 28 x 40 in 400 tex weighs 643 g", () => {
    const metres = 112_000 * loopMetres(swatch(28, 40)).about;
    expect(gramsOf(metres, 400)).toBeCloseTo((11.2 * 14.36 * 400) / 100, 0);
    expect(Math.abs(gramsOf(metres, 400) - 643)).toBeLessThan(1);
  });

  // The same handbook's formula in inches: cpi x wpi x l(mm) x 0.9155 / Ne; 50, 36, 2.8 mm and Ne 30 give 153.8 g.
  test("a square metre of 50 x 36 to the inch, 2.8 mm a loop, in Ne 30 weighs 153.8 g", () => {
    const stitches = (50 * 36) / 0.0254 ** 2;
    expect(Math.abs(gramsOf(stitches * 0.0028, 590.5 / 30) - 153.8)).toBeLessThan(0.2);
  });

  // By hand for 22 x 31 over 10 cm. About: sqrt(23.1 / 6.82). Least: wet relaxed Ks 21.6 less 3 % over a quarter stitch
  // and row more in the swatch, sqrt(20.952 / (2.225 x 3.125)). Most: Ks 23.1 + 1 over as much less in it,
  // sqrt(24.1 / (2.175 x 3.075)).
  test("a loop at 22 x 31 is 1.840 cm long, and between 1.736 and 1.898 cm", () => {
    const { least, about, most } = loopMetres(swatch(22, 31));
    expect([least, about, most].map((metres) => Number((100 * metres).toFixed(3)))).toEqual([
      1.736, 1.84, 1.898,
    ]);
  });

  test("a gauge that is said to be within 2 % leaves 2 % at either count", () => {
    const { least, most } = loopMetres({ ...swatch(22, 31), within: { stitches: 0.02, rows: 0.02 } });
    expect(100 * least).toBeCloseTo(Math.sqrt(20.952 / (6.82 * 1.02 ** 2)), 6);
    expect(100 * most).toBeCloseTo(Math.sqrt(24.1 / (6.82 * 0.98 ** 2)), 6);
  });
});

describe("yarn by a weighed swatch", () => {
  // Grams of the swatch / its stitches x stitches ("How to estimate yarn requirements", web page, 9 Jan 2016), by hand:
  // 38 g / 3500 x 6400 = 69.49 g; half a gram on the scale is 0.91 g of it.
  test("6400 stitches, where 50 x 70 weigh 38 g, take 69.5 g, a gram more or less", () => {
    const { least, about, most } = gramsByWeight({ stitches: 50 * 70, grams: 38 }, 6400);
    expect([least, about, most].map((grams) => Number(grams.toFixed(2)))).toEqual([68.57, 69.49, 70.4]);
  });

  // The area method ("Swatching to estimate yardage", web page, 24 Aug 2020) multiplies by area instead of stitches:
  // on a rectangle both are one. 40 cm x 60 cm at 20 x 30 over 10 cm; a swatch of 12 cm x 15 cm weighs 9 g.
  test("agrees with the area method on a rectangle", () => {
    const byArea = (9 / (12 * 15)) * (40 * 60);
    expect(gramsByWeight({ stitches: 24 * 45, grams: 9 }, 80 * 180).about).toBeCloseTo(byArea, 9);
  });
});

describe("cord", () => {
  // "The making of i-cords", machine-knitting blog, Jan 2012: knit one way, slip the other, the counter goes on by two.
  test("40 rounds are 80 passes", () => {
    expect(passesFor(40)).toBe(80);
  });

  // Derived: one round of n stitches takes n loops and a float of at most (n - 1) stitches' width; a tenth either way for
  // the tension, to be measured. By hand, 3 needles at 22 x 31: 3 x 18.404 + 2 x 4.545 = 64.30 mm.
  test("a cord stitch on 3 needles at 22 x 31 takes 64.3 mm of yarn, at least 46.9 and at most 71.7", () => {
    const { least, about, most } = cordStitchMetres(3, loopMetres(swatch(22, 31)), 0.1 / 22);
    expect([least, about, most].map((metres) => Number((1000 * metres).toFixed(1)))).toEqual([
      46.9, 64.3, 71.7,
    ]);
  });
});
