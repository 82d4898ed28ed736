import type { MeasureKind } from "./measure.ts";

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
