import { evaluateTree } from "../arithmetic/evaluate-tree.ts";
import { parseArithmetic } from "../arithmetic/parse-arithmetic.ts";
import { quoted } from "../diagnostics/shown.ts";
import { type UnitCode, type UnitProblem, unitProblem } from "./problem.ts";

/** A kind of quantity that is written as a number with its unit after it, and how it is spoken of. */
export interface MeasureKind<Unit extends string> {
  /** Each unit in the one that the amount is kept in. */
  readonly sizes: Readonly<Record<Unit, number>>;
  /** What knitters write for a unit that the file knows by another name. */
  readonly otherSpellings: ReadonlyMap<string, Unit>;
  /** "length", and with its article "a length". */
  readonly noun: string;
  readonly one: string;
  /** The units as they are listed in a message. */
  readonly units: string;
  /** What is shown as right where nothing better is known. */
  readonly example: { readonly amount: number; readonly unit: Unit };
  readonly code: UnitCode;
}

/** Longer than any amount that is a sum of a few numbers. */
const LONGEST = 40;

/** Amounts are kept to a millionth, far below what can be measured, so that 3 in is 76.2 mm and not 76.19999999999999. */
const STEPS = 1e6;

/**
 * Reads an amount: a number, or a sum of numbers, and one unit after it.
 *
 * @returns the amount in the unit that has size 1, of either sign, or what is wrong with the text
 */
export function parseMeasure<Unit extends string>(
  text: string,
  kind: MeasureKind<Unit>,
): { readonly amount: number } | { readonly problem: UnitProblem } {
  const written = text.trim();
  const { code, one } = kind;
  const example = exampleOf(kind, kind.example.unit);
  if (written.length > LONGEST) return unitProblem(code, `this is too long for ${one}`, example);
  const { amount = "", unit = "" } =
    /^(?<amount>.*?)(?<unit>[\p{L}"'\u2033\u201d]*)\.?$/su.exec(written)?.groups ?? {};
  const number = amount.trim();
  if (unit === "") {
    return isNumeric(number)
      ? unitProblem("missing-unit", `${one} needs its unit`, withUnit(decimals(number), kind))
      : unitProblem(code, `${quoted(written)} is not ${one}`, example);
  }
  if (!isUnit(kind, unit)) return unknownUnit(kind, number, unit);
  if (number === "") {
    return unitProblem(code, `a number is missing before ${unit}`, exampleOf(kind, unit));
  }
  const value = amountOf(number, kind, unit);
  if (typeof value !== "number") return { problem: value };
  return { amount: Math.round(value * kind.sizes[unit] * STEPS) / STEPS };
}

/** What is right for a number that stands without a unit: "20 cm, or another of mm, cm, m or in". */
export const withUnit = <Unit extends string>(number: string, kind: MeasureKind<Unit>): string =>
  `${number} ${kind.example.unit}, or another of ${kind.units}`;

/** "a length such as 20 cm". */
const exampleOf = <Unit extends string>(kind: MeasureKind<Unit>, unit: Unit): string =>
  `${kind.one} such as ${kind.example.amount} ${unit}`;

export const isUnit = <Unit extends string>({ sizes }: MeasureKind<Unit>, text: string): text is Unit =>
  Object.hasOwn(sizes, text);

function amountOf<Unit extends string>(
  number: string,
  kind: MeasureKind<Unit>,
  unit: Unit,
): number | UnitProblem {
  const { code, one } = kind;
  if (DECIMAL_COMMA.test(number)) {
    return unitProblem("decimal-comma", "decimals are written with a point", `${decimals(number)} ${unit}`)
      .problem;
  }
  const mixed = /^(\d+)\s+(\d+)\s*\/\s*(\d+)$/.exec(number);
  if (mixed) {
    const sum = `(${mixed[1]} + ${mixed[2]}/${mixed[3]}) ${unit}`;
    return unitProblem(code, "a fraction after a whole number needs a plus", sum).problem;
  }
  const parsed = parseArithmetic(number, NO_NAMES);
  if ("problem" in parsed) {
    const { problem } = parsed;
    const second = problem.code === "expression-unknown-name" && isUnit(kind, problem.found);
    return second
      ? unitProblem(code, `${one} has one unit, at its end`, exampleOf(kind, unit)).problem
      : unitProblem(code, problem.message, exampleOf(kind, unit)).problem;
  }
  const { tree } = parsed;
  if (
    tree.kind === "binary" &&
    (tree.operator === "+" || tree.operator === "-") &&
    !/^\(.*\)$/s.test(number)
  ) {
    return unitProblem(code, "a sum before a unit needs brackets", `(${number}) ${unit}`).problem;
  }
  const value = evaluateTree(tree, {});
  return typeof value === "number" ? value : unitProblem(code, value.problem, exampleOf(kind, unit)).problem;
}

function unknownUnit<Unit extends string>(
  kind: MeasureKind<Unit>,
  number: string,
  unit: string,
): { readonly problem: UnitProblem } {
  const lower = unit.toLowerCase();
  const meant = isUnit(kind, lower) ? lower : kind.otherSpellings.get(lower);
  if (!isNumeric(number)) {
    return unitProblem(
      kind.code,
      `${quoted(`${number} ${unit}`.trim())} is not ${kind.one}`,
      exampleOf(kind, kind.example.unit),
    );
  }
  return unitProblem(
    "unknown-unit",
    `${quoted(unit)} is not a unit of ${kind.noun} here`,
    meant ? `${decimals(number)} ${meant}` : `one of ${kind.units}`,
  );
}

const NO_NAMES: ReadonlySet<string> = new Set();

const DECIMAL_COMMA = /^[-+]?\d+,\d+$/;

const isNumeric = (text: string): boolean => /^[-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:\s*\/\s*\d+)?$/.test(text);

const decimals = (text: string): string => text.replace(",", ".");
