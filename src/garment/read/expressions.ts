import type { Place } from "../../diagnostics/diagnostic.ts";
import type { Expression } from "../../motif/expression.ts";
import type { Anchor, Rule } from "../../motif/motif.ts";
import { parseExpression } from "../../motif/parse-expression.ts";
import { type Cursor, listAt, type Reading, report } from "./cursor.ts";

/** An expression over a motif's quantities; a mistake is told at its own letter. */
export function expressionAt(
  reading: Reading,
  cursor: Cursor,
  what: string,
  quantities: ReadonlySet<string>,
): Expression | undefined {
  const { written, path } = cursor;
  if (written.kind === "number") return parsed(reading, cursor, what, written.value, quantities, path);
  if (written.kind === "text") return parsed(reading, cursor, what, written.text, quantities, path);
  return report(reading, cursor, {
    code: "wrong-type",
    message: `${what} is a number or a sum of quantities`,
    expected: "for example 4, interval or 2 * interval",
  });
}

function parsed(
  reading: Reading,
  cursor: Cursor,
  what: string,
  text: string | number,
  quantities: ReadonlySet<string>,
  path: Cursor["path"],
  offset = 0,
): Expression | undefined {
  const result = parseExpression(text, quantities, path);
  if ("expression" in result) return result.expression;
  const { code, message, found, expected } = result.problem;
  const place = placeOfLetter(cursor, offset + result.problem.offset);
  return report(reading, cursor, {
    code,
    message: `${what}: ${message}`,
    found,
    expected,
    ...(place && { place }),
  });
}

function placeOfLetter({ written }: Cursor, letters: number): Place | undefined {
  if (written.kind !== "text" || !written.place || written.indent === undefined) return written.place;
  return { line: written.place.line, column: written.place.column + written.indent + letters };
}

/** `[needle, row]`, and where more is said of it `[needle, row, { ... }]`, which is given on as a cursor. */
export function anchorAt(
  reading: Reading,
  cursor: Cursor,
  what: string,
  quantities: ReadonlySet<string>,
): { readonly anchor: Anchor; readonly more?: Cursor } | undefined {
  const example = "[needle, row], such as [-spread, interval]";
  const items = listAt(reading, cursor, what, example);
  if (!items) return undefined;
  const [needleCursor, rowCursor, more] = items;
  if (!needleCursor || !rowCursor || items.length > 3 || (more && more.written.kind !== "table"))
    return report(reading, cursor, {
      code: "wrong-type",
      message: `${what} has two parts, a needle and a row`,
      expected: example,
    });
  const needle = expressionAt(reading, needleCursor, "the needle", quantities);
  const row = expressionAt(reading, rowCursor, "the row", quantities);
  return needle && row && { anchor: { needle, row }, ...(more && { more }) };
}

/** A number that stands for what the file leaves unsaid. */
export const constant = (value: number, path: Cursor["path"]): Expression => ({
  source: String(value),
  path,
  tree: { kind: "number", value },
});

/** `1..n`: two sums, and two dots between them. */
export function rangeAt(
  reading: Reading,
  cursor: Cursor,
  what: string,
  quantities: ReadonlySet<string>,
): { readonly from: Expression; readonly to: Expression } | undefined {
  const { written, path } = cursor;
  const text = written.kind === "text" ? written.text : "";
  const dots = text.indexOf("..");
  if (dots < 0)
    return report(reading, cursor, {
      code: "not-a-range",
      message: `${what} are a range`,
      expected: "the first number and the last with two dots between them, such as 1..4 or 1..n",
    });
  const from = parsed(reading, cursor, what, text.slice(0, dots), quantities, path);
  const to = parsed(reading, cursor, what, text.slice(dots + 2), quantities, path, dots + 2);
  return from && to && { from, to };
}

const comparisons = ["<=", ">=", "==", "<", ">", "="] as const;

/** A comparison of two sums, such as `spread <= interval + 2`. */
export function ruleAt(reading: Reading, cursor: Cursor, quantities: ReadonlySet<string>): Rule | undefined {
  const { written, path } = cursor;
  const example = '"spread <= interval + 2"';
  if (written.kind !== "text")
    return report(reading, cursor, {
      code: "not-a-comparison",
      message: "a rule is a comparison, written as text",
      expected: example,
    });
  const { text } = written;
  const sign = comparisons
    .map((one) => ({ one, at: text.indexOf(one) }))
    .filter(({ at }) => at >= 0)
    .sort((a, b) => a.at - b.at || b.one.length - a.one.length)[0];
  if (!sign)
    return report(reading, cursor, {
      code: "not-a-comparison",
      message: "a rule compares two sums",
      expected: `one of < <= = >= > between them, such as ${example}`,
    });
  const rest = sign.at + sign.one.length;
  const left = parsed(reading, cursor, "the rule", text.slice(0, sign.at), quantities, path);
  const right = parsed(reading, cursor, "the rule", text.slice(rest), quantities, path, rest);
  if (!left || !right) return undefined;
  return { left, right, comparison: sign.one === "==" ? "=" : sign.one, source: text.trim(), path };
}
