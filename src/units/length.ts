import { isUnit, type MeasureKind, parseMeasure } from "./measure.ts";
import type { UnitProblem } from "./problem.ts";

/** Millimetres in each unit of length; the inch is 25.4 mm exactly, by definition (ISO 80000-3). */
export const MM_PER_UNIT = { mm: 1, cm: 10, m: 1000, in: 25.4 } as const;

export type LengthUnit = keyof typeof MM_PER_UNIT;

export const LENGTH: MeasureKind<LengthUnit> = {
  sizes: MM_PER_UNIT,
  noun: "length",
  one: "a length",
  units: "mm, cm, m or in",
  example: { amount: 20, unit: "cm" },
  code: "not-a-length",
  otherSpellings: new Map<string, LengthUnit>([
    ['"', "in"],
    ["''", "in"],
    ["\u2033", "in"],
    ["\u201d", "in"],
    ["inch", "in"],
    ["inches", "in"],
    ["ins", "in"],
    ["centimetre", "cm"],
    ["centimetres", "cm"],
    ["centimeter", "cm"],
    ["centimeters", "cm"],
    ["cms", "cm"],
    ["millimetre", "mm"],
    ["millimetres", "mm"],
    ["millimeter", "mm"],
    ["millimeters", "mm"],
    ["mms", "mm"],
    ["metre", "m"],
    ["metres", "m"],
    ["meter", "m"],
    ["meters", "m"],
  ]),
};

/**
 * Reads a length: a number, or a sum of numbers, and one unit after it: `20 cm`, `1/2 in`, `(20 + 2 * 3) cm`.
 *
 * @returns the length in mm, of either sign, or what is wrong with the text
 */
export function parseLength(text: string): { readonly mm: number } | { readonly problem: UnitProblem } {
  const parsed = parseMeasure(text, LENGTH);
  return "problem" in parsed ? parsed : { mm: parsed.amount };
}

export const isLengthUnit = (text: string): text is LengthUnit => isUnit(LENGTH, text);
