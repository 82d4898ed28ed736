import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseLength } from "../../../src/units/length.ts";
import { rangeText, roundLength, unitOf } from "../../../src/wizard/lengths.ts";

describe("roundLength", () => {
  it.each([
    [217, "cm", "22 cm"],
    [217, "in", "8.5 in"],
    [96, "mm", "95 mm"],
    [3, "cm", "0.3 cm"],
    [2_600, "m", "2.6 m"],
  ] as const)("names %d mm in %s as %s", (mm, unit, text) => {
    expect(roundLength(mm, { leastMm: 0, mostMm: 10_000 }, unit)).toBe(text);
  });

  it("stays within its limits", () => {
    const sizes = fc.double({ min: 0.5, max: 5000, noNaN: true });
    fc.assert(
      fc.property(sizes, sizes, sizes, fc.constantFrom("mm", "cm", "in", "m"), (mm, one, other, unit) => {
        const [leastMm, mostMm] = [Math.min(one, other), Math.max(one, other) + 1];
        const length = parseLength(roundLength(mm, { leastMm, mostMm }, unit));
        if ("problem" in length) throw new Error(length.problem.message);
        expect(length.mm).toBeGreaterThanOrEqual(leastMm);
        expect(length.mm).toBeLessThanOrEqual(mostMm);
      }),
      { numRuns: 500, seed: 20_240_613 },
    );
  });
});

describe("rangeText", () => {
  it("rounds inward", () => {
    expect(rangeText({ leastMm: 7.11, mostMm: 714.29 }, "cm")).toBe("from 0.8 cm to 71.4 cm");
    expect(rangeText({ leastMm: 714.29, mostMm: 714.29 }, "cm")).toBe("about 71.4 cm");
  });
});

describe("unitOf", () => {
  it("reads the unit at the end", () => {
    expect(["4 in", "1/2in", "9", "3 ft"].map(unitOf)).toEqual(["in", "in", "cm", "cm"]);
  });
});
