import { expect, test } from "vitest";
import { groundStitch } from "../../../src/cloth/gauge.ts";
import { gaugeRange } from "../../../src/cloth/gauge-range.ts";
import { groundWords } from "../../../src/report/gauge-words.ts";
import { garmentText } from "../../support/garment-text.ts";
import { soundGarment } from "../../support/run-garment.ts";

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

test("rows that were counted over a length of their own are as sure as that count", () => {
  const text = (swatch: string): string =>
    garmentText({ gauge: `gauge:\n  ground: ${swatch}\n  cord: { needles: 3, stitches: 19, over: 10 cm }` });
  const { ground } = soundGarment(
    text("{ stitches: 40, over: 18.2 cm, rows: 60, rows over: 19.4 cm }"),
  ).gauge;
  const { rowHeightMm, stitchWidthMm } = gaugeRange({ ground });
  expect(stitchWidthMm.most).toBeCloseTo(182 / 39.75, 12);
  expect(rowHeightMm.least).toBeCloseTo(194 / 60.25, 12);
  expect(rowHeightMm.most).toBeCloseTo(194 / 59.75, 12);
  expect(groundStitch({ ground }).heightMm).toBeCloseTo(194 / 60, 12);
  expect(groundWords(ground)).toBe("40 stitches over 18.2 cm and 60 rows over 19.4 cm");
  const { ground: plain } = soundGarment(text("{ stitches: 22, rows: 31, over: 10 cm }")).gauge;
  expect(groundWords(plain)).toBe("22 stitches and 31 rows over 10 cm");
});
