import type { Place } from "../../diagnostics/diagnostic.ts";
import type { Path } from "../../diagnostics/path.ts";
import type { Plain } from "../../motif/builtin/index.ts";

/**
 * A value as it was written in a file, with its place. What comes with the program (the built-in motifs) is read
 * in the same form and has no place.
 */
export type Written =
  | WrittenText
  | WrittenNumber
  | WrittenBoolean
  | WrittenNothing
  | WrittenList
  | WrittenTable;

interface Placed {
  readonly place?: Place;
}

interface WrittenText extends Placed {
  readonly kind: "text";
  readonly text: string;
  /** Columns from the place to the first character; not stated where the text is not written letter by letter. */
  readonly indent?: number;
}

interface WrittenNumber extends Placed {
  readonly kind: "number";
  readonly value: number;
  readonly text: string;
}

interface WrittenBoolean extends Placed {
  readonly kind: "boolean";
  readonly text: string;
}

interface WrittenNothing extends Placed {
  readonly kind: "nothing";
}

interface WrittenList extends Placed {
  readonly kind: "list";
  readonly items: readonly Written[];
}

export interface WrittenTable extends Placed {
  readonly kind: "table";
  readonly entries: ReadonlyMap<string, Entry>;
}

export interface Entry {
  readonly keyPlace?: Place;
  readonly value: Written;
  /** Where it is written, if that is not under its table: a size's own value is read in the place of the general one. */
  readonly home?: Path;
}

/** Data that comes with the program, in the form in which files are read. */
export function writtenFrom(plain: Plain): Written {
  if (plain === null) return { kind: "nothing" };
  if (typeof plain === "string") return { kind: "text", text: plain };
  if (typeof plain === "number") return { kind: "number", value: plain, text: String(plain) };
  if (typeof plain === "boolean") return { kind: "boolean", text: String(plain) };
  if (isList(plain)) return { kind: "list", items: plain.map(writtenFrom) };
  const entries = Object.entries(plain).map(([key, value]): [string, Entry] => [
    key,
    { value: writtenFrom(value) },
  ]);
  return { kind: "table", entries: new Map(entries) };
}

const isList = (plain: Plain): plain is readonly Plain[] => Array.isArray(plain);

/** The place of the value at `path`, or of the nearest thing around it that is written. */
export function placeAt(written: Written, path: Path): Place | undefined {
  let { place } = written;
  let at: Written | undefined = written;
  for (const step of path) {
    at = at && child(at, step);
    place = at?.place ?? place;
  }
  return place;
}

/** Whether there is a value at `path`. */
export const isWritten = (written: Written, path: Path): boolean =>
  path.reduce<Written | undefined>((at, step) => at && child(at, step), written) !== undefined;

function child(written: Written, step: string | number): Written | undefined {
  if (written.kind === "list") return typeof step === "number" ? written.items[step] : undefined;
  return written.kind === "table" ? written.entries.get(String(step))?.value : undefined;
}
