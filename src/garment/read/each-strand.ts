import { NAME_PATTERN, RESERVED_WORDS } from "../../arithmetic/tree.ts";
import type { Each, Successor } from "../../motif/motif.ts";
import { type Cursor, knownNameAt, type Reading, report, tableAt } from "./cursor.ts";
import { expressionAt, rangeAt } from "./expressions.ts";

const example = "{ i: 1..4 }";

/** `{ i: 1..n }`: one name, and the numbers that it runs through. */
export function eachAt(reading: Reading, cursor: Cursor, quantities: ReadonlySet<string>): Each | undefined {
  const table = tableAt(reading, cursor, "each", undefined, example);
  if (!table) return undefined;
  const [index, ...others] = table.keys();
  if (index === undefined || others.length > 0)
    return report(reading, cursor, {
      code: "wrong-type",
      message: "each has one name, that of the strand's number",
      expected: example,
    });
  const numbers = table.at(index)!;
  if (!NAME_PATTERN.test(index) || RESERVED_WORDS.has(index) || quantities.has(index))
    return report(reading, numbers, {
      code: "bad-name",
      message: `${index} cannot stand for a strand's number: it is no plain word, or has a meaning already`,
      found: index,
      expected: "a word of letters, such as i",
      ...(numbers.keyPlace && { place: numbers.keyPlace }),
    });
  const range = rangeAt(reading, numbers, "the numbers of the strands", quantities);
  return range && { index, ...range };
}

/** Whose place a strand takes for the next repeat. */
export function nextAt(
  reading: Reading,
  cursor: Cursor,
  strand: {
    readonly names: readonly string[];
    readonly each: Each | undefined;
    readonly known: ReadonlySet<string>;
  },
): Successor | undefined {
  if (strand.each) {
    const number = expressionAt(reading, cursor, "the number of the next strand", strand.known);
    return number && { number };
  }
  const name = knownNameAt(reading, cursor, "strand", "unknown-strand", strand.names);
  return name === undefined ? undefined : { strand: name, path: cursor.path };
}
