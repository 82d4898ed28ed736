import { describe, expect, test } from "vitest";
import { type GaugeRange, gaugeRange } from "../../../../src/cloth/gauge-range.ts";
import { countLimits, keepsLoopOver, keepsOver } from "../../../../src/fit/steady/counts.ts";
import type { Garment } from "../../../../src/garment/garment.ts";
import { garmentText } from "../../../support/garment-text.ts";
import { soundGarment } from "../../../support/run-garment.ts";

const worn = (keys: string): Garment =>
  soundGarment(garmentText({ bed: `bed: { needles: 150 }${keys && "\n"}${keys}` }));

describe("what the counts of a motif have to keep", () => {
  test("is nothing more than its ease at the gauge as told where the file asks for no more", () => {
    expect(countLimits(worn(""), "plait")).toStrictEqual({});
  });

  test("is the loop that a young child may wear, 7.5 cm round", () => {
    expect(countLimits(worn("wearer: { age: 4 }"), "plait")).toStrictEqual({ mostLoopMm: 75 });
  });

  test("is every gauge that so much of the swatch's doubt leaves", () => {
    const garment = worn("steady: 50 %");
    expect(countLimits(garment, "plait")).toStrictEqual({ over: gaugeRange(garment.gauge, 0.5) });
  });
});

/** Stitches of 3 to 4 mm, rows of 4 to 5 mm, cord stitches of 5 to 5.5 mm. */
const range = {
  stitchWidthMm: { least: 3, most: 4 },
  rowHeightMm: { least: 4, most: 5 },
  cordStitchMm: { least: 5, most: 5.5 },
} satisfies GaugeRange;

/** Five cord stitches over four rows straight up: 25 to 27.5 mm of cord over 16 to 20 mm of cloth. */
const count = { name: "run", needles: 0, rows: 4, climbs: 0, pickup: 5 };

describe("a loop over every gauge of a range", () => {
  // 27.5 mm of cord and 20 mm of cloth at the most.
  test("is as long as its longest cord over the most cloth", () => {
    expect(keepsLoopOver(count, range, 47.5)).toBe(true);
    expect(keepsLoopOver(count, range, 47.4)).toBe(false);
  });

  test("is as wide as the widest stitches", () => {
    // 3 needles of 4 mm by 4 rows of 4 mm: 20 mm at the widest stitch and a row of 4 mm, 27.5 mm of cord.
    const flat = { ...range, rowHeightMm: { least: 3, most: 4 } };
    expect(keepsLoopOver({ ...count, needles: 3 }, flat, 47.5)).toBe(true);
    expect(keepsLoopOver({ ...count, needles: 3 }, flat, 47.4)).toBe(false);
  });

  test("may be any length where nothing limits it", () => {
    expect(keepsLoopOver(count, range, undefined)).toBe(true);
  });
});

describe("a count over every gauge of a range", () => {
  // Its ease is 25 / 20 - 1 = 25 % at least and 27.5 / 16 - 1 = 71.875 % at most.
  const wide = { from: 0.25, to: 0.71875 };

  test("keeps its ease at the least and at the most", () => {
    expect(keepsOver(count, wide, range, {}, undefined)).toBe(true);
    expect(keepsOver(count, { ...wide, from: 0.26 }, range, {}, undefined)).toBe(false);
    expect(keepsOver(count, { ...wide, to: 0.71 }, range, {}, undefined)).toBe(false);
  });

  test("has both its ease and its loop to keep", () => {
    expect(keepsOver(count, wide, range, { mostLoopMm: 47.5 }, undefined)).toBe(true);
    expect(keepsOver(count, wide, range, { mostLoopMm: 47.4 }, undefined)).toBe(false);
    expect(keepsOver(count, { from: 0, to: 0.1 }, range, { mostLoopMm: 47.5 }, undefined)).toBe(false);
  });

  test("has less ease where it climbs a thick cord", () => {
    expect(keepsOver({ ...count, climbs: 1 }, wide, range, {}, undefined)).toBe(true);
    expect(keepsOver({ ...count, climbs: 1 }, wide, range, {}, 5)).toBe(false);
  });

  test("that is fixed stands off as far as the knitter says, but keeps its loop", () => {
    const loop = { ...count, fixed: 5 };
    expect(keepsOver(loop, { from: 0, to: 0.1 }, range, {}, undefined)).toBe(true);
    expect(keepsOver(loop, { from: 0, to: 0.1 }, range, { mostLoopMm: 47.4 }, undefined)).toBe(false);
  });
});
