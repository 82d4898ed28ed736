import type { MeasureKind } from "./measure.ts";

const YEARS_PER_UNIT = { years: 1, year: 1, months: 1 / 12, month: 1 / 12 } as const;

export type AgeUnit = keyof typeof YEARS_PER_UNIT;

export const AGE: MeasureKind<AgeUnit> = {
  sizes: YEARS_PER_UNIT,
  noun: "age",
  one: "an age",
  units: "years or months",
  example: { amount: 5, unit: "years" },
  code: "not-an-age",
  otherSpellings: new Map<string, AgeUnit>([
    ["y", "years"],
    ["yr", "years"],
    ["yrs", "years"],
    ["m", "months"],
    ["mo", "months"],
    ["mos", "months"],
    ["mths", "months"],
  ]),
};
