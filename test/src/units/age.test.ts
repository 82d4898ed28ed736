import { describe, expect, it } from "vitest";
import { AGE } from "../../../src/units/age.ts";
import { parseMeasure } from "../../../src/units/measure.ts";

describe("an age", () => {
  it.each<[string, number]>([
    ["5 years", 5],
    ["1 year", 1],
    ["18 months", 1.5],
    ["1 month", 0.083333],
    ["1/2 year", 0.5],
  ])("%s is %d years", (text, years) => {
    expect(parseMeasure(text, AGE)).toEqual({ amount: years });
  });

  it.each<[text: string, code: string, expected: string]>([
    ["5", "missing-unit", "5 years, or another of years or months"],
    ["5 Years", "unknown-unit", "5 years"],
    ["18 mths", "unknown-unit", "18 months"],
    ["3 weeks", "unknown-unit", "one of years or months"],
    ["young", "not-an-age", "an age such as 5 years"],
  ])("%s is refused", (text, code, expected) => {
    expect(parseMeasure(text, AGE)).toMatchObject({ problem: { code, expected } });
  });
});
