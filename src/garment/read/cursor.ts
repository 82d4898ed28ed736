import type { Code } from "../../diagnostics/codes.ts";
import type { Diagnostic, Place, Severity } from "../../diagnostics/diagnostic.ts";
import { nearest } from "../../diagnostics/nearest.ts";
import type { Path } from "../../diagnostics/path.ts";
import { quoted, sentence, shown } from "../../diagnostics/shown.ts";
import type { DrawingSource } from "../../drawing-file/drawing.ts";
import { homeOf } from "../keys.ts";
import type { Entry, Written } from "../source/written.ts";

/** Everything wrong that was found so far; reading goes on after a mistake, so that all are told in one go. */
export interface Reading {
  readonly diagnostics: Diagnostic[];
  /** The drawings that the garment names; none can be read where it is left out. */
  readonly drawing?: DrawingSource;
}

/** A value of the file and where it stands. */
export interface Cursor {
  readonly written: Written;
  readonly path: Path;
  /** Where the key stands under which it is written. */
  readonly keyPlace?: Place;
}

interface Mistake {
  readonly code: Code;
  readonly message: string;
  readonly expected?: string;
  readonly found?: string;
  readonly severity?: Severity;
  readonly place?: Place;
}

/** Notes a mistake at a cursor; what was read is shown unless the mistake says otherwise. */
export function report(reading: Reading, { written, path }: Cursor, mistake: Mistake): undefined {
  const place = mistake.place ?? written.place;
  reading.diagnostics.push({
    severity: mistake.severity ?? "error",
    code: mistake.code,
    message: sentence(mistake.message),
    ...(mistake.found === ""
      ? {}
      : { found: mistake.found === undefined ? describe(written) : shown(mistake.found) }),
    ...(mistake.expected !== undefined && { expected: sentence(mistake.expected) }),
    path,
    ...(place && { place }),
  });
  return undefined;
}

/** What was read, in a few words. */
function describe(written: Written): string {
  switch (written.kind) {
    case "text":
      return quoted(written.text);
    case "number":
    case "boolean":
      return shown(written.text);
    case "nothing":
      return "nothing";
    case "list":
      return written.items.length === 0 ? "an empty list" : `a list of ${written.items.length}`;
    case "table":
      return written.entries.size === 0
        ? "nothing between the brackets"
        : `keys (${shown([...written.entries.keys()].join(", "))})`;
  }
}

/** A set of keys and values, with the means to go on to one of them. */
export interface Table {
  readonly cursor: Cursor;
  /** The value of a key, or undefined where the key is not written. */
  readonly at: (key: string) => Cursor | undefined;
  /** The same; a missing key is a mistake. */
  readonly need: (key: string, expected: string) => Cursor | undefined;
  readonly keys: () => readonly string[];
}

/**
 * A value that must be a set of keys.
 *
 * @param what it is, for messages: "the bed"
 * @param known the keys it may have; undefined where the knitter names them
 */
export function tableAt(
  reading: Reading,
  cursor: Cursor,
  what: string,
  known: readonly string[] | undefined,
  example: string,
): Table | undefined {
  const { written, path } = cursor;
  if (written.kind !== "table")
    return report(reading, cursor, {
      code: "wrong-type",
      message: `keys with values are needed for ${what}`,
      expected: example,
    });
  if (known)
    for (const [key, entry] of written.entries)
      if (!known.includes(key)) unknownKey(reading, cursor, key, entry, what, known);
  const at = (key: string): Cursor | undefined => {
    const entry = written.entries.get(key);
    if (!entry) return undefined;
    return {
      written: entry.value,
      path: entry.home ?? [...path, key],
      ...(entry.keyPlace && { keyPlace: entry.keyPlace }),
    };
  };
  return {
    cursor,
    at,
    need: (key, expected) =>
      at(key) ??
      report(reading, cursor, {
        code: "missing-key",
        message: `the key ${key} is missing in ${what}`,
        expected,
        found: "",
        ...(cursor.keyPlace && { place: cursor.keyPlace }),
      }),
    keys: () => [...written.entries.keys()],
  };
}

export function unknownKey(
  reading: Reading,
  { path, written }: Cursor,
  key: string,
  entry: Entry,
  what: string,
  known: readonly string[],
): void {
  const place = entry.keyPlace ?? written.place;
  reading.diagnostics.push({
    severity: "error",
    code: "unknown-key",
    message: sentence(`there is no key ${quoted(key)} in ${what}`),
    found: shown(key),
    expected: sentence(rightKey(key, known)),
    path: [...path, key],
    ...(place && { place }),
  });
}

function rightKey(key: string, known: readonly string[]): string {
  const longer = known.find((one) => one.startsWith(`${key} `));
  if (longer !== undefined) return `${longer} (the nearest known key)`;
  const home = homeOf(key);
  if (home !== undefined) return `${shown(key)} belongs to ${home}`;
  const joined = /^([^:]+):(\S+)$/.exec(key);
  if (joined) return `a space after the colon: ${shown(`${joined[1]}: ${joined[2]}`)}`;
  const near = nearest(key, known);
  return near === undefined ? `one of ${known.join(", ")}` : `${near} (the nearest known key)`;
}

/** The items of a list; a value that is no list is a mistake. */
export function listAt(
  reading: Reading,
  cursor: Cursor,
  what: string,
  example: string,
): readonly Cursor[] | undefined {
  const { written, path } = cursor;
  if (written.kind === "list")
    return written.items.map((item, index): Cursor => ({ written: item, path: [...path, index] }));
  return report(reading, cursor, { code: "wrong-type", message: `${what} is a list`, expected: example });
}

/** The text of a name; a number or a word such as true counts as one: a knitter may well call a piece 1. */
export function nameAt(reading: Reading, cursor: Cursor, what: string): string | undefined {
  const { written } = cursor;
  if (written.kind === "text" && written.text.trim() !== "") return written.text;
  if (written.kind === "number" || written.kind === "boolean") return written.text;
  return report(reading, cursor, {
    code: "wrong-type",
    message: `${what} is a name`,
    expected: "a word or two",
  });
}

/** True or false. */
export function flagAt(reading: Reading, cursor: Cursor | undefined, what: string): boolean | undefined {
  if (!cursor) return undefined;
  const { written } = cursor;
  if (written.kind === "boolean") return /^true$/i.test(written.text);
  return report(reading, cursor, {
    code: "wrong-type",
    message: `${what} is said by true or false`,
    expected: "true or false",
  });
}

/** One of a few words. */
export function wordAt<Word extends string>(
  reading: Reading,
  cursor: Cursor,
  what: string,
  words: readonly Word[],
): Word | undefined {
  const { written } = cursor;
  const word = words.find((one) => written.kind === "text" && written.text === one);
  if (word !== undefined) return word;
  const near = written.kind === "text" ? nearest(written.text, words) : undefined;
  return report(reading, cursor, {
    code: "wrong-word",
    message: `${what} is one of a few words`,
    expected: near ?? words.join(" or "),
  });
}

/** A name of something that must be there, such as a piece. */
export function knownNameAt(
  reading: Reading,
  cursor: Cursor,
  what: string,
  code: Code,
  known: readonly string[],
  where = "",
): string | undefined {
  const name = nameAt(reading, cursor, what);
  if (name === undefined || known.includes(name)) return name;
  const near = nearest(name, known);
  return report(reading, cursor, {
    code,
    message: `there is no ${what} ${quoted(name)}${where}`,
    ...(near !== undefined
      ? { expected: `${near} (the nearest known name)` }
      : known.length > 0 && { expected: `one of ${known.join(", ")}` }),
  });
}
