import { describe, expect, test } from "vitest";
import { cordsOf } from "../../src/cord/cord.ts";
import { pickupsFor } from "../../src/fit/looks.ts";
import { builtInMotif } from "../../src/garment/read/motifs.ts";
import { easeOf, spanMm } from "../../src/motif/path-length.ts";
import { distinctSegments } from "../../src/motif/segments.ts";
import { isProblem, traceMotif } from "../../src/motif/trace-motif.ts";
import { isMirroredAsWorn } from "../../src/motif/worn-side.ts";

const gauges = [
  [20, 28],
  [22, 31],
  [24, 34],
  [28, 40],
] as const;

const motif = builtInMotif("crossed cord");
const trace = traceMotif(
  motif,
  new Map([
    ["interval", 4],
    ["spread", 3],
  ]),
);

describe("crossed cord, interval 4 and spread 3", () => {
  test("has a lead-in of 2 needles across and a crossing of 5, both 4 rows up", () => {
    if (isProblem(trace)) throw new Error(trace.problem);
    expect(distinctSegments(trace).map(({ name, needles, rows }) => [name, needles, rows])).toEqual([
      ["lead-in", 2, 4],
      ["crossing", 5, 4],
    ]);
  });

  // Common practice, no published source: the counts are 3, then 5, and one cord stitch length serves for both.
  test.each(gauges)(
    "at %i x %i over 10 cm counts of 3 and 5 tell one cord stitch length within 2 %",
    (stitches, rows) => {
      const stitch = { widthMm: 100 / stitches, heightMm: 100 / rows };
      const leadIn = spanMm({ needles: 2, rows: 4, climbs: 0 }, stitch) / 3;
      const crossing = spanMm({ needles: 5, rows: 4, climbs: 0 }, stitch) / 5;
      expect(Math.abs(leadIn / crossing - 1)).toBeLessThan(0.02);
      const length = (leadIn + crossing) / 2;
      const counts = (needles: number): number[] =>
        pickupsFor(spanMm({ needles, rows: 4, climbs: 0 }, stitch), length, { from: -0.05, to: 0.15 }).map(
          ({ pickup }) => pickup,
        );
      expect(counts(2)).toContain(3);
      expect(counts(5)).toContain(5);
    },
  );

  // Common practice, no published source: the two arms take up 4.0 to 4.1 times the ground's length.
  test.each(gauges)(
    "at %i x %i the cord is 4.0 to 4.1 times as long as the ground it lies on",
    (stitches, rows) => {
      if (isProblem(trace) || motif.kind !== "cord") throw new Error("the built-in motif cannot be traced");
      const stitch = { widthMm: 100 / stitches, heightMm: 100 / rows };
      const length = spanMm({ needles: 5, rows: 4, climbs: 0 }, stitch) / 5;
      const segments = distinctSegments(trace).map((one) => ({ ...one, pickup: one.needles === 2 ? 3 : 5 }));
      const repeats = 40;
      const used = cordsOf([{ look: { trace, segments }, repeats, joins: [] }]).reduce(
        (sum, cord) => sum + cord.used,
        0,
      );
      const takeUp = (used * length) / ((4 + 8 * repeats) * stitch.heightMm);
      expect(takeUp).toBeGreaterThan(4.0 - 0.05);
      expect(takeUp).toBeLessThan(4.1 + 0.05);
    },
  );

  test("a strand that passes over another climbs it", () => {
    const stitch = { widthMm: 5, heightMm: 3 };
    const flat = spanMm({ needles: 5, rows: 4, climbs: 0 }, stitch, 5);
    // By hand: 2 * (hypot(27.73 / 2, 5) - 27.73 / 2) = 1.748 mm.
    expect(spanMm({ needles: 5, rows: 4, climbs: 1 }, stitch, 5) - flat).toBeCloseTo(1.748, 3);
    expect(easeOf(5, flat / 5, flat)).toBeCloseTo(0, 12);
  });
});

// Machine-knitting blog, "Visualizing knit cables 3", 3 Jan 2022: the purl side faces the knitter.
test("a laid cord is worn as it is seen, a transferred cable is mirrored", () => {
  expect(isMirroredAsWorn("cord")).toBe(false);
  expect(isMirroredAsWorn("cable")).toBe(true);
});
