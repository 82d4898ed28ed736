import { evaluateTree } from "../arithmetic/evaluate-tree.ts";
import { parseArithmetic } from "../arithmetic/parse-arithmetic.ts";
import { quoted } from "../diagnostics/shown.ts";
import { type UnitProblem, unitProblem } from "./problem.ts";

/** Millimetres in each unit of length; the inch is 25.4 mm exactly, by definition (ISO 80000-3). */
export const MM_PER_UNIT = { mm: 1, cm: 10, m: 1000, in: 25.4 } as const;

export type LengthUnit = keyof typeof MM_PER_UNIT;

/** The units as they are listed in a message. */
export const LENGTH_UNITS = "mm, cm, m or in";

/** Longer than any length that is a sum of a few numbers. */
const LONGEST_LENGTH = 40;

/** Lengths are kept to a millionth of a millimetre, far below what can be knitted, so that 3 in is 76.2 mm and not 76.19999999999999. */
const STEPS_PER_MM = 1e6;

/** What knitters write for a unit that the file knows by another name. */
const OTHER_SPELLINGS: ReadonlyMap<string, LengthUnit> = new Map<string, LengthUnit>([
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
]);

/**
 * Reads a length: a number, or a sum of numbers, and one unit after it: `20 cm`, `1/2 in`, `(20 + 2 * 3) cm`.
 *
 * @returns the length in mm, of either sign, or what is wrong with the text
 */
export function parseLength(text: string): { readonly mm: number } | { readonly problem: UnitProblem } {
  const written = text.trim();
  if (written.length > LONGEST_LENGTH) {
    return unitProblem("not-a-length", "this is too long for a length", "a length such as 20 cm");
  }
  const { amount = "", unit = "" } =
    /^(?<amount>.*?)(?<unit>[\p{L}"'\u2033\u201d]*)\.?$/su.exec(written)?.groups ?? {};
  const number = amount.trim();
  if (unit === "") {
    return isNumeric(number)
      ? unitProblem(
          "missing-unit",
          "a length needs its unit",
          `${decimals(number)} cm, or another of ${LENGTH_UNITS}`,
        )
      : unitProblem("not-a-length", `${quoted(written)} is not a length`, "a length such as 20 cm");
  }
  if (!isLengthUnit(unit)) return unknownUnit(number, unit);
  if (number === "") {
    return unitProblem("not-a-length", `a number is missing before ${unit}`, `a length such as 20 ${unit}`);
  }
  const value = amountOf(number, unit);
  if (typeof value !== "number") return { problem: value };
  return { mm: Math.round(value * MM_PER_UNIT[unit] * STEPS_PER_MM) / STEPS_PER_MM };
}

function amountOf(number: string, unit: LengthUnit): number | UnitProblem {
  if (DECIMAL_COMMA.test(number)) {
    return unitProblem("decimal-comma", "decimals are written with a point", `${decimals(number)} ${unit}`)
      .problem;
  }
  const mixed = /^(\d+)\s+(\d+)\s*\/\s*(\d+)$/.exec(number);
  if (mixed) {
    const sum = `(${mixed[1]} + ${mixed[2]}/${mixed[3]}) ${unit}`;
    return unitProblem("not-a-length", "a fraction after a whole number needs a plus", sum).problem;
  }
  const parsed = parseArithmetic(number, NO_NAMES);
  if ("problem" in parsed) {
    const { code, message } = parsed.problem;
    const second = code === "expression-unknown-name" && isLengthUnit(parsed.problem.found);
    return second
      ? unitProblem("not-a-length", "a length has one unit, at its end", `a length such as 20 ${unit}`)
          .problem
      : unitProblem("not-a-length", message, `a length such as 20 ${unit}`).problem;
  }
  const { tree } = parsed;
  if (
    tree.kind === "binary" &&
    (tree.operator === "+" || tree.operator === "-") &&
    !/^\(.*\)$/s.test(number)
  ) {
    return unitProblem("not-a-length", "a sum before a unit needs brackets", `(${number}) ${unit}`).problem;
  }
  const value = evaluateTree(tree, {});
  return typeof value === "number"
    ? value
    : unitProblem("not-a-length", value.problem, `a length such as 20 ${unit}`).problem;
}

function unknownUnit(number: string, unit: string): { readonly problem: UnitProblem } {
  const lower = unit.toLowerCase();
  const meant = isLengthUnit(lower) ? lower : OTHER_SPELLINGS.get(lower);
  if (!isNumeric(number)) {
    return unitProblem(
      "not-a-length",
      `${quoted(`${number} ${unit}`.trim())} is not a length`,
      "a length such as 20 cm",
    );
  }
  return unitProblem(
    "unknown-unit",
    `${quoted(unit)} is not a unit of length here`,
    meant ? `${decimals(number)} ${meant}` : `one of ${LENGTH_UNITS}`,
  );
}

const NO_NAMES: ReadonlySet<string> = new Set();

const DECIMAL_COMMA = /^[-+]?\d+,\d+$/;

const isNumeric = (text: string): boolean => /^[-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:\s*\/\s*\d+)?$/.test(text);

const decimals = (text: string): string => text.replace(",", ".");

export const isLengthUnit = (text: string): text is LengthUnit => Object.hasOwn(MM_PER_UNIT, text);
