import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readGarment } from "../../../src/garment/read-garment.ts";
import { countsOf } from "../../../src/steady/steadiness.ts";
import { swatchGauge } from "../../../src/swatch/swatch-gauge.ts";
import { withGauge } from "../../../src/swatch/written-gauge.ts";
import { swatchesOf } from "./support/swatches-of.ts";

const garment = `format: evenrow/1
# Our own strip.
bed: { needles: 150 }
gauge:
  ground: { stitches: 22, rows: 31, over: 12 cm }   # from the first swatch
  cord: { thickness: 5 mm, needles: 3, stitches: 19, over: 10 cm }
pieces:
  strip: { outline: [{ height: 0 cm, width: 14 cm }, { height: 24 cm, width: 14 cm }] }
place: [{ motif: crossed cord, on: strip }]
`;

const unwashed = "# Measured unwashed: wash and rest it as the garment will be, and measure again.";

describe("withGauge", () => {
  test("changes the gauge and leaves comments, order and what swatches do not say", () => {
    const gauge = swatchGauge(swatchesOf("40 stitches 18.2 cm, 60 rows 19.4 cm", "cord: 50 stitches 26 cm"));
    expect(withGauge(garment, gauge)).toBe(
      garment
        .replace("  ground:", `  ${unwashed}\n  ground:`)
        .replace("  cord:", `  ${unwashed}\n  cord:`)
        .replace(
          "stitches: 22, rows: 31, over: 12 cm",
          "stitches: 40, rows: 60, over: 18.2 cm, rows over: 19.4 cm, within: { stitches: 0.7 %, rows: 0.5 % }",
        )
        // A quarter of a cord stitch in 50 and half a millimetre on 26 cm.
        .replace("stitches: 19, over: 10 cm", "stitches: 50, over: 26 cm, within: 0.6 %"),
    );
  });

  test("takes away the length for the rows alone where they were counted over that of the stitches", () => {
    const apart = garment.replace("over: 12 cm", "over: 12 cm, rows over: 14 cm, within: { rows: 2 % }");
    expect(withGauge(apart, swatchGauge(swatchesOf("40 stitches 18.2 cm, 58 rows 18.2 cm")))).toContain(
      "{ stitches: 40, rows: 58, over: 18.2 cm, within: { stitches: 0.7 %, rows: 0.6 % } }",
    );
  });

  test("writes several swatches as all counts over all lengths, and one range where both ways are as sure", () => {
    const gauge = swatchGauge(
      swatchesOf("40 stitches 18.2 cm, 40 rows 18.2 cm", "20.5 stitches 9.3 cm, 20.5 rows 9.3 cm"),
    );
    expect(withGauge(garment, gauge)).toContain(
      "{ stitches: 60.5, rows: 60.5, over: 27.5 cm, within: 0.7 % }",
    );
  });

  test("says what has to be counted on a larger swatch", () => {
    const gauge = swatchGauge(swatchesOf("31 stitches 14.2 cm, 44 rows 14.6 cm", "cord: 40 stitches 21 cm"));
    const read = readGarment(withGauge(garment, gauge), "strip.yaml").garment!.gauge;
    expect(countsOf(read, 2)).toEqual({ stitches: 62, rows: 88, cordStitches: 80 });
  });

  test("remarks whether it was washed, in place of what the last swatch remarked", () => {
    const first = withGauge(garment, swatchGauge(swatchesOf("40 stitches 18.2 cm, 60 rows 19.4 cm")));
    const then = withGauge(first, swatchGauge(swatchesOf("washed: 40 stitches 18.2 cm, 60 rows 19.4 cm")));
    expect(then).toBe(first.replace(unwashed, "# Measured washed."));
    expect(then).toContain("# Our own strip.");
  });

  test("remarks nothing where a file has no room for it", () => {
    const gauge = swatchGauge(swatchesOf("40 stitches 18.2 cm, 60 rows 19.4 cm"));
    const inBrackets = garment.replace(
      /gauge:.*?pieces/s,
      "gauge: { ground: { stitches: 22, rows: 31, over: 10 cm } }\npieces",
    );
    expect(withGauge(inBrackets, gauge)).not.toContain("Measured");
    const json = JSON.stringify({ gauge: { ground: { stitches: 22, rows: 31, over: "10 cm" } } }, null, 2);
    expect(JSON.parse(withGauge(json, gauge))).toMatchObject({ gauge: { ground: { stitches: 40 } } });
  });

  test("leaves a cord alone that was not measured", () => {
    const gauge = swatchGauge(swatchesOf("40 stitches 18.2 cm, 60 rows 19.4 cm"));
    expect(withGauge(garment, gauge)).toContain(
      "cord: { thickness: 5 mm, needles: 3, stitches: 19, over: 10 cm }",
    );
  });

  test("refuses swatches that have next to nothing in common", () => {
    const gauge = swatchGauge(
      swatchesOf("40 stitches 10 cm, 60 rows 19 cm", "40 stitches 30 cm, 60 rows 19 cm"),
    );
    expect(() => withGauge(garment, gauge)).toThrow("may be off by 100 %");
  });

  test("is read back as the same gauge, within what it says it may be off", () => {
    const counts = fc.integer({ min: 10, max: 120 });
    const mm = fc.integer({ min: 20, max: 80 });
    fc.assert(
      fc.property(counts, counts, mm, mm, (stitches, rows, tenStitchesMm, tenRowsMm) => {
        const width = ((stitches * tenStitchesMm) / 10).toFixed(1);
        const height = ((rows * tenRowsMm) / 10).toFixed(1);
        const gauge = swatchGauge(swatchesOf(`${stitches} stitches ${width} mm, ${rows} rows ${height} mm`));
        const read = readGarment(withGauge(garment, gauge), "strip.yaml").garment?.gauge.ground;
        const { ground } = gauge;
        if (!read || !ground) throw new Error("the gauge is gone");
        expect(countsOf({ ground: read }, 1)).toEqual({ stitches, rows });
        for (const [back, one, within] of [
          [read.stitches / read.overMm, ground.stitches, read.within!.stitches!],
          [read.rows / read.overMm, ground.rows, read.within!.rows!],
        ] as const) {
          expect(back / one.perMm).toBeCloseTo(1, 9);
          // Rounded up to a tenth of a percent.
          expect(within).toBeGreaterThanOrEqual(one.within - 1e-12);
          expect(within).toBeLessThan(one.within + 0.001);
        }
      }),
      { seed: 3119, numRuns: 60 },
    );
  });
});
