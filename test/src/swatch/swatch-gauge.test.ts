import { describe, expect, test } from "vitest";
import { cordNeedlesApart, swatchGauge } from "../../../src/swatch/swatch-gauge.ts";
import { swatchesOf } from "./support/swatches-of.ts";

describe("swatchGauge", () => {
  test("takes the washed swatches, and the others for what washing changes", () => {
    const { ground } = swatchGauge(
      swatchesOf("40 stitches 20 cm, 60 rows 20 cm", "washed: 40 stitches 19 cm, 60 rows 21 cm"),
    );
    expect(ground?.washed).toBe(true);
    expect(ground?.stitches.perMm).toBeCloseTo(40 / 190, 12);
    expect(ground?.change?.width).toBeCloseTo(-0.05, 12);
    expect(ground?.change?.height).toBeCloseTo(0.05, 12);
  });

  test("reads ground and cord each by itself", () => {
    const gauge = swatchGauge(
      swatchesOf("cord on 4 needles: 50 stitches 25 cm", "washed cord: 50 stitches 24 cm"),
    );
    expect(gauge.ground).toBeUndefined();
    expect(gauge.cord).toMatchObject({ needles: 4, washed: true });
    expect(gauge.cord?.change?.length).toBeCloseTo(-0.04, 12);
  });

  test("knows lengths of different cords", () => {
    const three = "cord on 3 needles: 50 stitches 25 cm";
    expect(cordNeedlesApart(swatchesOf(three, three))).toEqual([]);
    expect(cordNeedlesApart(swatchesOf(three, "cord on 4 needles: 50 stitches 25 cm"))).toEqual([3, 4]);
  });
});
