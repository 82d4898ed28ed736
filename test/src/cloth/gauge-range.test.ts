import { expect, test } from "vitest";
import { gaugeRange } from "../../../src/cloth/gauge-range.ts";

const gauge = {
  ground: { stitches: 25, rows: 40, overMm: 100 },
  cord: { needles: 3, stitches: 20, overMm: 100, within: 0.05 },
};

test("a stitch is as wide as a quarter of one more or less in the count would make it", () => {
  const { stitchWidthMm, rowHeightMm, cordStitchMm } = gaugeRange(gauge);
  expect(stitchWidthMm.least).toBeCloseTo(100 / 25.25, 12);
  expect(stitchWidthMm.most).toBeCloseTo(100 / 24.75, 12);
  expect(rowHeightMm.least).toBeCloseTo(100 / 40.25, 12);
  expect(rowHeightMm.most).toBeCloseTo(100 / 39.75, 12);
  expect(cordStitchMm?.least).toBeCloseTo(100 / 21, 12);
  expect(cordStitchMm?.most).toBeCloseTo(100 / 19, 12);
});

test("half of the range is that of a swatch twice as large", () => {
  const twice = { ground: { stitches: 50, rows: 80, overMm: 200 } };
  const { cord: _, ...plain } = gauge;
  const [half, larger] = [gaugeRange(plain, 0.5), gaugeRange(twice)];
  for (const way of ["stitchWidthMm", "rowHeightMm"] as const)
    for (const end of ["least", "most"] as const) expect(half[way][end]).toBeCloseTo(larger[way][end], 12);
  expect(gaugeRange(plain, 0)).toEqual({
    stitchWidthMm: { least: 4, most: 4 },
    rowHeightMm: { least: 2.5, most: 2.5 },
  });
});
