import { type MeasureKind, parseMeasure } from "./measure.ts";
import type { UnitProblem } from "./problem.ts";

/** Grams in each unit; the ounce is 28.349523125 g exactly (international avoirdupois pound of 1959, from memory). */
const GRAMS_PER_UNIT = { g: 1, kg: 1000, oz: 28.349523125 } as const;

export type MassUnit = keyof typeof GRAMS_PER_UNIT;

/** What knitters call a weight. */
export const MASS: MeasureKind<MassUnit> = {
  sizes: GRAMS_PER_UNIT,
  noun: "weight",
  one: "a weight",
  units: "g, kg or oz",
  example: { amount: 38, unit: "g" },
  code: "not-a-weight",
  otherSpellings: new Map<string, MassUnit>([
    ["gr", "g"],
    ["gm", "g"],
    ["gms", "g"],
    ["gram", "g"],
    ["grams", "g"],
    ["gramme", "g"],
    ["grammes", "g"],
    ["kilo", "kg"],
    ["kilos", "kg"],
    ["kilogram", "kg"],
    ["kilograms", "kg"],
    ["ounce", "oz"],
    ["ounces", "oz"],
    ["ozs", "oz"],
  ]),
};

/**
 * Reads a weight: a number, or a sum of numbers, and one unit after it: `38 g`, `1/2 oz`.
 *
 * @returns the weight in grams, of either sign, or what is wrong with the text
 */
export function parseMass(text: string): { readonly grams: number } | { readonly problem: UnitProblem } {
  const parsed = parseMeasure(text, MASS);
  return "problem" in parsed ? parsed : { grams: parsed.amount };
}
