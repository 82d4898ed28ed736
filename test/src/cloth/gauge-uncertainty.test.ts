import { describe, expect, test } from "vitest";
import { cordUncertainty, gaugeOff, gaugeUncertainty } from "../../../src/cloth/gauge-uncertainty.ts";

describe("how far off a gauge may be", () => {
  test("is a quarter stitch in the swatch's stitches, and a quarter row in its rows", () => {
    expect(gaugeUncertainty({ stitches: 25, rows: 40, overMm: 100 })).toEqual({
      stitches: 0.01,
      rows: 0.00625,
    });
  });

  test("is what the file says, where it does", () => {
    expect(
      gaugeUncertainty({ stitches: 25, rows: 40, overMm: 100, within: { stitches: 0.02, rows: 0.01 } }),
    ).toEqual({
      stitches: 0.02,
      rows: 0.01,
    });
    expect(gaugeUncertainty({ stitches: 25, rows: 40, overMm: 100, within: { rows: 0.02 } })).toEqual({
      stitches: 0.01,
      rows: 0.02,
    });
  });

  test("is for a cord a quarter of a cord stitch in its count, or what the file says", () => {
    const cord = { needles: 3, stitches: 20, overMm: 100 };
    expect(cordUncertainty(cord)).toBe(0.0125);
    expect(cordUncertainty({ ...cord, within: 0.01 })).toBe(0.01);
    const ground = { stitches: 25, rows: 40, overMm: 100 };
    expect(gaugeOff({ ground, cord })).toEqual({ stitches: 0.01, rows: 0.00625, cord: 0.0125 });
    expect(gaugeOff({ ground })).toEqual({ stitches: 0.01, rows: 0.00625 });
  });
});
