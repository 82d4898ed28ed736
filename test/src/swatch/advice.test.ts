import { describe, expect, test } from "vitest";
import { adviceOn } from "../../../src/swatch/advice.ts";
import { gaugeText } from "../../../src/swatch/gauge-text.ts";
import { swatchGauge } from "../../../src/swatch/swatch-gauge.ts";
import { swatchesOf } from "./support/swatches-of.ts";

const advice = (...texts: readonly string[]): readonly string[] =>
  adviceOn(swatchGauge(swatchesOf(...texts))).map(({ words }) => words);

describe("advice", () => {
  test("warns about a swatch that is too small, and says what a larger one would gain", () => {
    const words = advice("19 stitches 8.55 cm, 29 rows 9.28 cm");
    expect(words[0]).toContain("19 stitches are few");
    expect(words[1]).toContain("29 rows are few");
    expect(words).toContain(
      "Over 60 stitches instead of 19 the width would be known within 0.5 % instead of 1.4 %.",
    );
  });

  test("keeps quiet about a large, washed one", () => {
    expect(advice("washed: 60 stitches 27 cm, 80 rows 25.6 cm")).toEqual([
      "Let a swatch rest overnight before it is measured.",
    ]);
  });

  test("warns about swatches that differ by more than can be misread", () => {
    const words = advice("40 stitches 18 cm, 60 rows 19 cm", "40 stitches 19 cm, 60 rows 19 cm");
    expect(words.filter((one) => one.includes("differ"))).toHaveLength(1);
    expect(words[0]).toContain("differ in their stitches");
  });

  test("asks for the middle 4 in of a cord", () => {
    expect(advice("washed cord: 19 stitches 10 cm")[0]).toContain("count the middle 4 in");
    expect(advice("washed cord: 19 stitches 4 in")[0]).toContain("Measure a cord in its middle");
  });

  test("reminds of washing whatever was not washed", () => {
    const cord = "cord: 50 stitches 26 cm";
    const ground = "60 stitches 27 cm, 80 rows 25.6 cm";
    expect(advice(cord, ground).join()).toContain("Ground and cord were measured unwashed");
    expect(advice(cord, `washed: ${ground}`).join()).toContain("The cord was measured unwashed");
    expect(advice(`washed ${cord}`, ground).join()).toContain("The ground was measured unwashed");
  });
});

test("the text tells gauge, uncertainty and washing", () => {
  const gauge = swatchGauge(
    swatchesOf("40 stitches 20 cm, 60 rows 20 cm", "washed: 40 stitches 19 cm, 60 rows 20 cm"),
  );
  const lines = gaugeText(gauge, 80).split("\n");
  expect(lines.slice(0, 4)).toEqual([
    "Ground, over 10 cm, from 1 swatch, washed",
    "  stitches   21.05  within 0.7 %",
    "  rows       30.00  within 0.5 %",
    "  Washing made it 5 % narrower and no longer.",
  ]);
});
