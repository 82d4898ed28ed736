import { AGE } from "../../units/age.ts";
import { LENGTH } from "../../units/length.ts";
import { MASS } from "../../units/mass.ts";
import { type MeasureKind, parseMeasure, withUnit } from "../../units/measure.ts";
import { parsePercentage } from "../../units/percentage.ts";
import { type Cursor, type Reading, report } from "./cursor.ts";

/** Smallest and largest a value may sensibly be, both allowed; outside it is a slip of the pen. */
export interface Limits {
  readonly least: number;
  readonly most: number;
}

/** A plain number. */
export function numberAt(reading: Reading, cursor: Cursor, what: string, limits: Limits): number | undefined {
  const { written } = cursor;
  if (written.kind === "text" && looksLikeNumber(written.text)) {
    const digits = written.text.replace(",", ".").trim();
    return written.text.includes(",")
      ? report(reading, cursor, {
          code: "decimal-comma",
          message: `${what}: decimals are written with a point`,
          expected: digits,
        })
      : report(reading, cursor, {
          code: "quoted-number",
          message: `${what} is a number, so it stands without quotes`,
          expected: digits,
        });
  }
  if (written.kind !== "number")
    return report(reading, cursor, {
      code: "wrong-type",
      message: `${what} is a plain number`,
      expected: `a number from ${limits.least} to ${limits.most}`,
    });
  if (!plainDigits.test(written.text) || !Number.isFinite(written.value))
    return report(reading, cursor, {
      code: "coded-number",
      message: `${what} is a number in plain digits`,
      expected: `a number from ${limits.least} to ${limits.most}`,
    });
  return within(reading, cursor, what, written.value, limits, String);
}

const plainDigits = /^[-+]?(?:\d+(?:\.\d*)?|\.\d+)$/;

const looksLikeNumber = (text: string): boolean => /^\s*[-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)\s*$/.test(text);

/** A whole number. */
export function wholeAt(reading: Reading, cursor: Cursor, what: string, limits: Limits): number | undefined {
  const value = numberAt(reading, cursor, what, limits);
  if (value === undefined || Number.isInteger(value)) return value;
  return report(reading, cursor, {
    code: "not-whole",
    message: `${what} is a whole number`,
    expected: `${Math.floor(value)} or ${Math.ceil(value)}`,
  });
}

/** A length in mm. */
export const lengthAt = (
  reading: Reading,
  cursor: Cursor,
  what: string,
  limitsMm: Limits,
): number | undefined => measureAt(reading, cursor, what, limitsMm, LENGTH, inCm);

/** A weight in grams. */
export const massAt = (
  reading: Reading,
  cursor: Cursor,
  what: string,
  limitsGrams: Limits,
): number | undefined => measureAt(reading, cursor, what, limitsGrams, MASS, inGrams);

/** An age in years; a bare number counts years. */
export const ageAt = (
  reading: Reading,
  cursor: Cursor,
  what: string,
  limitsYears: Limits,
): number | undefined =>
  cursor.written.kind === "number"
    ? numberAt(reading, cursor, what, limitsYears)
    : measureAt(reading, cursor, what, limitsYears, AGE, inYears);

function measureAt<Unit extends string>(
  reading: Reading,
  cursor: Cursor,
  what: string,
  limits: Limits,
  kind: MeasureKind<Unit>,
  inWords: (amount: number) => string,
): number | undefined {
  const { written } = cursor;
  if (written.kind === "number")
    return report(reading, cursor, {
      code: "missing-unit",
      message: `${what} is ${kind.one}, and ${kind.one} needs its unit`,
      expected: withUnit(written.text, kind),
    });
  if (written.kind !== "text")
    return report(reading, cursor, {
      code: "wrong-type",
      message: `${what} is ${kind.one}`,
      expected: `a number and a unit, such as ${kind.example.amount} ${kind.example.unit}`,
    });
  const parsed = parseMeasure(written.text, kind);
  if ("problem" in parsed)
    return report(reading, cursor, { ...parsed.problem, message: `${what}: ${parsed.problem.message}` });
  return within(reading, cursor, what, parsed.amount, limits, inWords);
}

/** A percentage as a fraction. */
export function percentageAt(
  reading: Reading,
  cursor: Cursor,
  what: string,
  limits: Limits,
): number | undefined {
  const { written } = cursor;
  if (written.kind === "number")
    return report(reading, cursor, {
      code: "missing-percent",
      message: `${what} is a percentage, and a percentage needs its %`,
      expected: `${written.text} %`,
    });
  if (written.kind !== "text")
    return report(reading, cursor, {
      code: "wrong-type",
      message: `${what} is a percentage`,
      expected: "2 %",
    });
  const parsed = parsePercentage(written.text);
  if ("problem" in parsed)
    return report(reading, cursor, { ...parsed.problem, message: `${what}: ${parsed.problem.message}` });
  return within(reading, cursor, what, parsed.fraction, limits, inPercent);
}

/** A length as it is shown to a knitter. */
export const inCm = (mm: number): string => `${tidy(mm / 10)} cm`;

const inGrams = (grams: number): string => `${tidy(grams)} g`;

const inYears = (years: number): string => `${tidy(years)} years`;

/** A fraction as it is shown to a knitter. */
export const inPercent = (fraction: number): string => `${tidy(fraction * 100)} %`;

/** Without the last digits, which only show how numbers are stored: 7.000000000000001. */
const tidy = (value: number): number => Number(value.toPrecision(12));

function within(
  reading: Reading,
  cursor: Cursor,
  what: string,
  value: number,
  { least, most }: Limits,
  inWords: (value: number) => string,
): number | undefined {
  if (Object.is(value, -0) || (value === 0 && hasMinus(cursor)))
    return report(reading, cursor, {
      code: "coded-number",
      message: `${what} is zero, which has no sign`,
      expected: inWords(0),
    });
  if (value >= least && value <= most) return value;
  const code = value < 0 && least >= 0 ? "negative-size" : value === 0 ? "zero-size" : "absurd-size";
  const trouble = {
    "negative-size": "is below zero",
    "zero-size": "is zero",
    "absurd-size": "is beyond what makes sense",
  };
  return report(reading, cursor, {
    code,
    message: `${what} ${trouble[code]}`,
    expected: `from ${inWords(least)} to ${inWords(most)}`,
  });
}

/** A measure's sum comes out as zero without a sign, however it was written. */
const hasMinus = ({ written }: Cursor): boolean => written.kind === "text" && /^\s*-/.test(written.text);
