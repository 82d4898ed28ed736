import type { EditValue } from "../edit/edit-value.ts";
import { type Allowed, anyFrom, only } from "../garment/allowed.ts";
import { evenStep } from "./rule-words.ts";

/** Longer sets are written as a range or as steps, not value by value. */
const longestList = 5;

/** A set of whole numbers as the file writes it: `4`, `2..9`, `[2, 4, 6]`, `{ from: 2, to: 40, step: 2 }`. */
export function writtenAllowed(allowed: Allowed): EditValue {
  if (allowed.kind === "from") return { least: allowed.least };
  const { values } = allowed;
  const [first, last] = [values[0]!, values.at(-1)!];
  if (values.length === 1) return first;
  const step = evenStep(values);
  if (step === 1) return `${first}..${last}`;
  return step !== undefined && values.length > longestList ? { from: first, to: last, step } : [...values];
}

/**
 * Reads what a knitter typed: "4", "2..9", "2-9", "2 to 9", "2, 4, 6", "2..20 by 2", "5 or more".
 *
 * @returns the set, or in words what could be typed
 */
export function typedAllowed(text: string, least: number, most: number): Allowed | string {
  const forms = "a number such as 4, a range such as 2..9, or numbers such as 2, 4, 6";
  const open = /^\s*(\d+)\s*(?:or more|\+|\.\.)\s*$/.exec(text);
  if (open) return within([Number(open[1])], least, most) ?? anyFrom(Number(open[1]));
  const range = /^\s*(-?\d+)\s*(?:\.\.|-|to)\s*(-?\d+)\s*(?:by\s*(\d+)\s*)?$/.exec(text);
  if (range) {
    const [from, to, step] = [Number(range[1]), Number(range[2]), Number(range[3] ?? 1)];
    if (from > to) return `A range starts at its lower end: ${to}..${from}`;
    if (step < 1) return "A range goes up by steps of 1 or more";
    const wrong = within([from, to], least, most);
    if (wrong !== undefined) return wrong;
    const values: number[] = [];
    for (let value = from; value <= to; value += step) values.push(value);
    return only(...values);
  }
  const parts = text.split(/[\s,]+/).filter((part) => part !== "");
  if (parts.length === 0 || !parts.every((part) => /^-?\d+$/.test(part))) return `Type ${forms}`;
  const values = parts.map(Number);
  return within(values, least, most) ?? only(...values);
}

function within(values: readonly number[], least: number, most: number): string | undefined {
  const wrong = values.find((value) => value < least || value > most);
  return wrong === undefined ? undefined : `${wrong} is out of the question: from ${least} to ${most}`;
}

/** One value fewer or more at an end of a set; in words why not, where that cannot be. */
export function movedEnd(
  allowed: Allowed,
  end: "from" | "to",
  by: 1 | -1,
  limits: { readonly least: number; readonly most: number; readonly chosen?: number },
): Allowed | string {
  if (allowed.kind === "from") {
    if (end === "from")
      return allowed.least + by < limits.least
        ? `Nothing below ${limits.least} is possible here`
        : anyFrom(allowed.least + by);
    if (by === 1) return "There is no upper end to move up";
    if (limits.chosen === undefined)
      return "There is no upper end yet, and no fit to take one from; type one";
    return upTo(allowed.least, limits.chosen);
  }
  const { values } = allowed;
  const [first, last] = [values[0]!, values.at(-1)!];
  const narrows = end === "from" ? by === 1 : by === -1;
  if (narrows)
    return values.length === 1
      ? `${first} is the only value left; widen the other end first, or type another value`
      : only(...(end === "from" ? values.slice(1) : values.slice(0, -1)));
  const next = end === "from" ? first - stepAt(values, 0) : last + stepAt(values, values.length - 2);
  if (next < limits.least) return `Nothing below ${limits.least} is possible here`;
  if (next > limits.most) return `Nothing above ${limits.most} is possible here`;
  return only(...values, next);
}

/** The step between a value and the one after it; a single value is widened by one. */
const stepAt = (values: readonly number[], index: number): number =>
  values.length < 2 ? 1 : values[index + 1]! - values[index]!;

function upTo(least: number, most: number): Allowed {
  const values: number[] = [];
  for (let value = least; value <= most; value++) values.push(value);
  return only(...values);
}
