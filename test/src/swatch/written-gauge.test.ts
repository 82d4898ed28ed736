import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readGarment } from "../../../src/garment/read-garment.ts";
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

describe("withGauge", () => {
  test("changes the gauge and leaves comments, order and what swatches do not say", () => {
    const gauge = swatchGauge(swatchesOf("40 stitches 18.2 cm, 60 rows 19.4 cm", "cord: 50 stitches 26 cm"));
    expect(withGauge(garment, gauge)).toBe(
      garment
        .replace(
          "stitches: 22, rows: 31, over: 12 cm",
          "stitches: 21.98, rows: 30.93, over: 10 cm, within: 0.7 %",
        )
        // A quarter of a cord stitch in 50 and half a millimetre on 26 cm, with what writing 19.23 loses.
        .replace("stitches: 19, over: 10 cm", "stitches: 19.23, over: 10 cm, within: 0.6 %"),
    );
  });

  test("tells rows for the length of the stitches, where the file had another one for them", () => {
    const apart = garment.replace("over: 12 cm", "over: 12 cm, rows over: 14 cm");
    const read = readGarment(
      withGauge(apart, swatchGauge(swatchesOf("40 stitches 18.2 cm, 60 rows 19.4 cm"))),
      "strip.yaml",
    ).garment!.gauge.ground;
    expect(read.rows / read.overMm).toBeCloseTo(0.3093, 9);
    expect(read.rowsCounted).toEqual({ rows: 30.93, overMm: 100 });
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
        const within = read.within ?? 0;
        for (const [back, one] of [
          [read.stitches / read.overMm, ground.stitches],
          [read.rows / read.overMm, ground.rows],
        ] as const) {
          expect(Math.abs(back / one.perMm - 1)).toBeLessThanOrEqual(within);
          // What the swatch allows on either side is in the range that the file states about its own numbers.
          expect(back * (1 + within)).toBeGreaterThanOrEqual(one.perMm * (1 + one.within) * (1 - 1e-4));
          expect(back * (1 - within)).toBeLessThanOrEqual(one.perMm * (1 - one.within) * (1 + 1e-4));
        }
      }),
      { seed: 3119, numRuns: 60 },
    );
  });
});
