import { describe, expect, it } from "vitest";
import { DEFAULT_WEIGHTS, weightOf } from "../../../src/garment/weights.ts";

describe("weightOf", () => {
  it.each([
    ["length", 3],
    ["balance", 0.5],
    ["ease", 1],
    ["interval", 1.5],
    ["spread", 1.2],
    ["waste", 0.1],
    ["repeats", 1],
    ["twist", 1],
    ["toString", 1],
    ["__proto__", 1],
  ])("%s weighs %d where nothing is said", (term, weight) => {
    expect(weightOf({}, term)).toBe(weight);
    expect(weightOf(DEFAULT_WEIGHTS, term)).toBe(weight);
  });

  it("takes what the garment says, zero too", () => {
    expect(weightOf({ length: 0, twist: 4 }, "length")).toBe(0);
    expect(weightOf({ length: 0, twist: 4 }, "twist")).toBe(4);
    expect(weightOf({ length: 0, twist: 4 }, "ease")).toBe(1);
  });
});
