import { describe, expect, it } from "vitest";
import { MASS } from "../../../src/units/mass.ts";
import { parseMeasure } from "../../../src/units/measure.ts";

describe("a weight", () => {
  it.each<[string, number]>([
    ["38 g", 38],
    ["38g", 38],
    ["0.4 kg", 400],
    ["1 oz", 28.349523],
    ["(1 + 1/2) oz", 42.524285],
    ["-2 g", -2],
  ])("%s is %d grams", (text, grams) => {
    expect(parseMeasure(text, MASS)).toEqual({ amount: grams });
  });

  it.each<[text: string, code: string, message: string, expected: string]>([
    ["38", "missing-unit", "a weight needs its unit", "38 g, or another of g, kg or oz"],
    ["38 G", "unknown-unit", '"G" is not a unit of weight here', "38 g"],
    ["38 ounces", "unknown-unit", '"ounces" is not a unit of weight here', "38 oz"],
    ["38 lb", "unknown-unit", '"lb" is not a unit of weight here', "one of g, kg or oz"],
    ["heavy", "not-a-weight", '"heavy" is not a weight', "a weight such as 38 g"],
    ["g", "not-a-weight", "a number is missing before g", "a weight such as 38 g"],
    ["1 oz + 2 g", "not-a-weight", "a weight has one unit, at its end", "a weight such as 38 g"],
  ])("%s is refused", (text, code, message, expected) => {
    expect(parseMeasure(text, MASS)).toEqual({ problem: { code, message, expected } });
  });
});
