import { describe, expect, test } from "vitest";
import { gaugeUncertainty } from "../../../src/cloth/gauge-uncertainty.ts";

describe("how far off a gauge may be", () => {
  test("is a quarter stitch in the swatch's stitches, and a quarter row in its rows", () => {
    expect(gaugeUncertainty({ stitches: 25, rows: 40, overMm: 100 })).toEqual({
      stitches: 0.01,
      rows: 0.00625,
    });
  });

  test("is what the file says, where it does", () => {
    expect(gaugeUncertainty({ stitches: 25, rows: 40, overMm: 100, within: 0.02 })).toEqual({
      stitches: 0.02,
      rows: 0.02,
    });
  });
});
