import type { Path } from "../../diagnostics/path.ts";
import { keysOf } from "../keys.ts";
import { layOver, type PlacedTable } from "../source/lay-over.ts";
import type { Entry, Written, WrittenTable } from "../source/written.ts";
import { type Cursor, type Reading, report, tableAt } from "./cursor.ts";
import * as limits from "./limits.ts";

const example = "{ S: { size: woman S }, M: { size: woman M } }";

/** The file as it reads for one size. */
export interface SizeWritten {
  readonly name: string;
  readonly path: Path;
  /** The top of the file with what the size says of its own in the place of what is said for all. */
  readonly top: Cursor;
}

/**
 * The sizes of a file, in its order. What a size says of a piece is laid over what `pieces` says of it, key by key;
 * `size` goes into every shape that the size does not describe otherwise.
 */
export function sizesAt(reading: Reading, cursor: Cursor, top: WrittenTable): readonly SizeWritten[] {
  const table = tableAt(reading, cursor, "the sizes", undefined, example);
  if (!table) return [];
  const names = table.keys();
  if (names.length === 0)
    report(reading, cursor, { code: "empty-range", message: "there is no size", expected: example });
  if (names.length > limits.sizes.most)
    report(reading, cursor, {
      code: "too-many-values",
      message: `there are ${names.length} sizes`,
      expected: `at most ${limits.sizes.most}`,
      found: "",
    });
  return names.slice(0, limits.sizes.most).map((name) => {
    const inner = table.at(name)!;
    return { name, path: inner.path, top: { written: topFor(reading, inner, name, top), path: [] } };
  });
}

function topFor(reading: Reading, cursor: Cursor, name: string, top: WrittenTable): WrittenTable {
  // A size with nothing of its own is the garment as it stands.
  if (cursor.written.kind === "nothing") return top;
  const table = tableAt(reading, cursor, `the size ${name}`, keysOf("size"), "{ size: woman S }");
  if (!table || cursor.written.kind !== "table") return top;
  const { entries } = cursor.written;
  const own = new Map([...entries].filter(([key]) => key === "pieces" || key === "wearer"));
  const laid = layOver(
    { table: top, path: [] },
    { table: { ...cursor.written, entries: own }, path: cursor.path },
    (key, below, over) => (key === "pieces" ? inside(below, over, pieceOver) : over),
  );
  const size = entries.get("size");
  const sized = size ? withSize(laid, { ...size, home: [...cursor.path, "size"] }) : laid;
  return { ...sized, ...(top.place && { place: top.place }) };
}

/** A table laid over another under the same key; anything else simply takes its place. */
function inside(below: Entry, over: Entry, join?: (key: string, below: Entry, over: Entry) => Entry): Entry {
  const [lower, upper] = [tableOf(below), tableOf(over)];
  return lower && upper ? { ...over, value: layOver(lower, upper, join) } : over;
}

function tableOf({ value, home }: Entry): PlacedTable | undefined {
  return value.kind === "table" && home ? { table: value, path: home } : undefined;
}

/** A piece has either an outline or a shape, so one that a size writes puts the other aside. */
function pieceOver(_name: string, below: Entry, over: Entry): Entry {
  const upper = over.value.kind === "table" ? over.value.entries : new Map<string, Entry>();
  const aside = upper.has("outline") ? "shape" : upper.has("shape") ? "outline" : undefined;
  return inside(without(below, aside), over, (key, one, other) =>
    key === "marks" || (key === "shape" && !isAnotherShape(one.value, other.value))
      ? inside(one, other)
      : other,
  );
}

function without(entry: Entry, key: string | undefined): Entry {
  if (key === undefined || entry.value.kind !== "table") return entry;
  const entries = new Map([...entry.value.entries].filter(([name]) => name !== key));
  return { ...entry, value: { ...entry.value, entries } };
}

/** Measurements of one shape mean nothing to another. */
function isAnotherShape(below: Written, over: Written): boolean {
  const like = (written: Written): string | undefined => {
    const value = written.kind === "table" ? written.entries.get("like")?.value : undefined;
    return value?.kind === "text" ? value.text : undefined;
  };
  return like(over) !== undefined && like(over) !== like(below);
}

/** Puts a size of the tables into every shape, except where the size itself has written another there. */
function withSize(top: WrittenTable, size: Entry): WrittenTable {
  const into = (entry: Entry, path: Path): Entry => {
    if (entry.value.kind !== "table") return entry;
    const shape = entry.value.entries.get("shape");
    if (shape?.value.kind !== "table") return entry;
    const shapePath = shape.home ?? [...path, "shape"];
    const written = shape.value.entries.get("size");
    if (written && (written.home ?? shapePath)[0] === "sizes") return entry;
    const sized = layOver(
      { table: shape.value, path: shapePath },
      { table: { ...shape.value, entries: new Map([["size", size]]) }, path: shapePath },
    );
    const entries = new Map(entry.value.entries).set("shape", { ...shape, home: shapePath, value: sized });
    return { ...entry, home: path, value: { ...entry.value, entries } };
  };
  const pieces = top.entries.get("pieces");
  if (pieces?.value.kind !== "table") return top;
  const base = pieces.home ?? ["pieces"];
  const entries = new Map(
    [...pieces.value.entries].map(([name, entry]) => [name, into(entry, entry.home ?? [...base, name])]),
  );
  const value: Written = { ...pieces.value, entries };
  return { ...top, entries: new Map(top.entries).set("pieces", { ...pieces, value }) };
}
