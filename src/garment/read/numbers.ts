import { parseLength } from "../../units/length.ts";
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
  if (written.kind === "text" && looksLikeNumber(written.text))
    return report(reading, cursor, {
      code: "quoted-number",
      message: `${what} is a number, and this one stands in quotes or is a text`,
      expected: written.text.replace(",", ".").trim(),
    });
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
  return within(reading, cursor, what, written.value + 0, limits, String);
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
export function lengthAt(
  reading: Reading,
  cursor: Cursor,
  what: string,
  limitsMm: Limits,
): number | undefined {
  const { written } = cursor;
  if (written.kind === "number")
    return report(reading, cursor, {
      code: "missing-unit",
      message: `${what} is a length, and a length needs its unit`,
      expected: `${written.text} cm, or another of mm, cm, m or in`,
    });
  if (written.kind !== "text")
    return report(reading, cursor, {
      code: "wrong-type",
      message: `${what} is a length`,
      expected: "a number and a unit, such as 20 cm",
    });
  const parsed = parseLength(written.text);
  if ("problem" in parsed)
    return report(reading, cursor, { ...parsed.problem, message: `${what}: ${parsed.problem.message}` });
  return within(reading, cursor, what, parsed.mm + 0, limitsMm, (mm) => `${mm / 10} cm`);
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
  return within(reading, cursor, what, parsed.fraction + 0, limits, (fraction) => `${100 * fraction} %`);
}

function within(
  reading: Reading,
  cursor: Cursor,
  what: string,
  value: number,
  { least, most }: Limits,
  inWords: (value: number) => string,
): number | undefined {
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
