import { describe, expect, test } from "vitest";
import { cordStitchMm, groundStitch, halfNeedles, nearest, wholeWithin } from "../../../src/cloth/gauge.ts";

describe("a gauge", () => {
  test("gives the width and height of one stitch, and the length of a cord's", () => {
    const ground = { stitches: 25, rows: 40, overMm: 100 };
    expect(groundStitch({ ground })).toEqual({ widthMm: 4, heightMm: 2.5 });
    expect(cordStitchMm({ needles: 3, stitches: 20, overMm: 110 })).toBe(5.5);
  });
});

describe("whole needles and rows", () => {
  test("are the nearest, halves upward, even where a division lost its last digit", () => {
    expect([22.4, 22.5, 22.6, -0.5].map(nearest)).toEqual([22, 23, 23, 0]);
    // 22.5 stitches of 1 / 1.1 mm.
    expect(22.499999999999996).toBeLessThan(22.5);
    expect(nearest(22.499999999999996)).toBe(23);
    expect(nearest(22.499999)).toBe(22);
  });

  test("that fit into a length are never more, but for the last digit", () => {
    expect([3.9, 4, 4.1].map(wholeWithin)).toEqual([3, 4, 4]);
    expect(wholeWithin(3.9999999999999996)).toBe(4);
    expect(wholeWithin(3.999999)).toBe(3);
  });

  test("of a width about the centre are as many on each side", () => {
    const stitch = { widthMm: 5, heightMm: 4 };
    // 200 mm are 40 stitches; 204 mm are 40.8, of which 20.4 on each side; 205 mm are 20.5 on each.
    expect([200, 204, 205].map((mm) => halfNeedles(mm, stitch))).toEqual([20, 20, 21]);
  });
});
