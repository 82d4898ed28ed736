import { type Allowed, allows, anyFrom, only, type Preference } from "../allowed.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, listAt, type Reading, report, tableAt } from "./cursor.ts";
import { type Limits, numberAt, wholeAt } from "./numbers.ts";

/** Values a range may hold; more are never told apart at the machine. */
const mostValues = 10_000;

const forms = "4, [2, 4, 6], 2..9, or { from: 2, to: 10, step: 2 }";

/** What a quantity is allowed to be: a number, a list, `a..b`, or `{ from, to, step }`. */
function allowedAt(reading: Reading, cursor: Cursor, what: string, limits: Limits): Allowed | undefined {
  const { written } = cursor;
  switch (written.kind) {
    case "number": {
      const value = wholeAt(reading, cursor, what, limits);
      return value === undefined ? undefined : only(value);
    }
    case "list":
      return listed(reading, cursor, what, limits);
    case "text":
      return ranged(reading, cursor, what, limits, written.text);
    case "table":
      return stepped(reading, cursor, what, limits);
    default:
      return report(reading, cursor, {
        code: "wrong-type",
        message: `${what} says what is allowed`,
        expected: forms,
      });
  }
}

function listed(reading: Reading, cursor: Cursor, what: string, limits: Limits): Allowed | undefined {
  const items = listAt(reading, cursor, what, forms) ?? [];
  if (items.length === 0)
    return report(reading, cursor, {
      code: "empty-range",
      message: `${what} allows nothing`,
      expected: `at least one value: ${forms}`,
    });
  const values = items.map((item) => wholeAt(reading, item, what, limits));
  const good = values.filter((value) => value !== undefined);
  return good.length === values.length ? only(...good) : undefined;
}

function ranged(
  reading: Reading,
  cursor: Cursor,
  what: string,
  limits: Limits,
  text: string,
): Allowed | undefined {
  const [, from, to] = /^\s*(-?\d{1,9})\s*\.\.\s*(-?\d{1,9})\s*$/.exec(text) ?? [];
  if (from === undefined || to === undefined) {
    if (/^\s*[-+]?\d+(?:[.,]\d+)?\s*$/.test(text)) {
      numberAt(reading, cursor, what, limits);
      return undefined;
    }
    return report(reading, cursor, {
      code: "not-a-range",
      message: `${what} is not a range of whole numbers`,
      expected: forms,
    });
  }
  return spread(reading, cursor, what, limits, Number(from), Number(to), 1);
}

function stepped(reading: Reading, cursor: Cursor, what: string, limits: Limits): Allowed | undefined {
  const table = tableAt(reading, cursor, what, keysOf("range"), forms);
  const fromCursor = table?.need("from", "the least value: { from: 2, to: 10, step: 2 }");
  const toCursor = table?.need("to", "the greatest value: { from: 2, to: 10, step: 2 }");
  const stepCursor = table?.at("step");
  const from = fromCursor && wholeAt(reading, fromCursor, what, limits);
  const to = toCursor && wholeAt(reading, toCursor, what, limits);
  const step = stepCursor
    ? wholeAt(reading, stepCursor, `the step of ${what}`, { least: 1, most: mostValues })
    : 1;
  if (from === undefined || to === undefined || step === undefined) return undefined;
  return spread(reading, cursor, what, limits, from, to, step);
}

function spread(
  reading: Reading,
  cursor: Cursor,
  what: string,
  { least, most }: Limits,
  from: number,
  to: number,
  step: number,
): Allowed | undefined {
  if (from > to)
    return report(reading, cursor, {
      code: "reversed-range",
      message: `${what} starts above its end`,
      expected: `${to}..${from}`,
    });
  if (from < least)
    return report(reading, cursor, {
      code: from < 0 ? "negative-size" : "zero-size",
      message: `${what} starts at ${from}, below what is possible`,
      expected: `a range from ${least} on`,
    });
  if (to > most || (to - from) / step >= mostValues)
    return report(reading, cursor, {
      code: to > most ? "absurd-size" : "too-many-values",
      message: `${what} allows more than makes sense`,
      expected: `values up to ${most}, at most ${mostValues} of them`,
    });
  const values: number[] = [];
  for (let value = from; value <= to; value += step) values.push(value);
  return only(...values);
}

/**
 * What is allowed and what is preferred: the allowed values alone, or `{ allow, prefer }`.
 *
 * @param otherwise what is allowed where only a preference is written
 */
export function preferenceAt(
  reading: Reading,
  cursor: Cursor,
  what: string,
  limits: Limits,
  otherwise: Allowed | undefined,
  section: "preference" | "quantity" = "preference",
): Preference | undefined {
  const { written } = cursor;
  if (written.kind !== "table" || isStepped(written.entries)) {
    const allowed = allowedAt(reading, cursor, what, limits);
    return allowed && { allowed };
  }
  const table = tableAt(reading, cursor, what, keysOf(section), "{ allow: 2..9, prefer: 3 }");
  const allowCursor =
    otherwise === undefined
      ? table?.need("allow", "what is allowed, such as allow: 2..9")
      : table?.at("allow");
  const preferCursor = table?.at("prefer");
  const allowed = allowCursor ? allowedAt(reading, allowCursor, what, limits) : otherwise;
  const prefer =
    preferCursor &&
    numberAt(reading, preferCursor, `the preference of ${what}`, {
      least: Math.min(0, limits.least),
      most: limits.most,
    });
  if (allowed && prefer !== undefined && !allows(allowed, prefer))
    report(reading, preferCursor!, {
      severity: "warning",
      code: "prefer-not-allowed",
      message: `the preference of ${what} is not among what is allowed, so it is only come near to`,
      expected: `one of ${inWords(allowed)}`,
    });
  return allowed && { allowed, ...(prefer !== undefined && { prefer }) };
}

function inWords(allowed: Allowed): string {
  if (allowed.kind === "from") return `the numbers from ${allowed.least} on`;
  const { values } = allowed;
  return values.length > 8 ? `${values.slice(0, 4).join(", ")} ... ${values.at(-1)}` : values.join(", ");
}

const isStepped = (entries: ReadonlyMap<string, unknown>): boolean =>
  (entries.has("from") || entries.has("to") || entries.has("step")) &&
  !entries.has("allow") &&
  !entries.has("prefer");

/** A margin: what is allowed, or `{ least: n }`. */
export function marginAt(
  reading: Reading,
  cursor: Cursor,
  what: string,
  limits: Limits,
): Allowed | undefined {
  const { written } = cursor;
  if (written.kind !== "table" || !written.entries.has("least"))
    return allowedAt(reading, cursor, what, limits);
  const least = leastAt(reading, cursor, what, limits);
  return least === undefined ? undefined : anyFrom(least);
}

/** `{ least: n }`. */
export function leastAt(reading: Reading, cursor: Cursor, what: string, limits: Limits): number | undefined {
  const table = tableAt(reading, cursor, what, keysOf("open range"), "{ least: 5 }");
  const inner = table?.need("least", "{ least: 5 }");
  return inner && wholeAt(reading, inner, what, limits);
}
