import { isAlias, isMap, isScalar, isSeq, type Pair, type ParsedNode, type Scalar, type YAMLMap } from "yaml";
import type { Code } from "../../diagnostics/codes.ts";
import type { Diagnostic } from "../../diagnostics/diagnostic.ts";
import type { Path } from "../../diagnostics/path.ts";
import { quoted, shown } from "../../diagnostics/shown.ts";
import type { PlaceOf } from "./places.ts";
import type { Entry, Written } from "./written.ts";

/** Deeper than anything in a garment: the anchors of a motif's strands lie 8 deep. */
const DEEPEST = 20;

/** Values in one file, those that are repeated by reference counted again: ten times the largest garment. */
const MOST_VALUES = 50_000;

/** References (*name) in one file. */
const MOST_REFERENCES = 200;

/** Stops the reading of a file at the first thing that makes the rest of it worthless; never leaves this file. */
class Stop extends Error {
  constructor(readonly diagnostic: Diagnostic) {
    super(diagnostic.message);
  }
}

/** Turns the parser's nodes into values that know their places; there is no `written` where that can't be done. */
export function convert(
  contents: ParsedNode | null,
  text: string,
  placeOf: PlaceOf,
): { readonly written?: Written; readonly diagnostics: readonly Diagnostic[] } {
  const conversion = new Conversion(text, placeOf);
  try {
    return { written: conversion.convert(contents, []), diagnostics: conversion.diagnostics };
  } catch (stop) {
    if (!(stop instanceof Stop)) throw stop;
    return { diagnostics: [...conversion.diagnostics, stop.diagnostic] };
  }
}

class Conversion {
  readonly diagnostics: Diagnostic[] = [];
  private values = 0;
  private references = 0;
  private readonly named = new Map<string, { readonly written: Written; readonly values: number } | "open">();

  constructor(
    private readonly text: string,
    private readonly placeOf: PlaceOf,
  ) {}

  convert(node: ParsedNode | null, path: Path): Written {
    if (!node) return { kind: "nothing" };
    const offset = node.range[0];
    if (path.length > DEEPEST) {
      throw this.stop("too-deep", path, offset, "this lies too deep inside other lists and keys", {
        expected: `at most ${DEEPEST} levels`,
      });
    }
    this.count(1, path, offset);
    if (isAlias(node)) return this.follow(node.source, path, offset);
    const name = node.anchor;
    if (name !== undefined) this.named.set(name, "open");
    const before = this.values;
    const written = this.convertNamed(node, path, offset);
    if (name !== undefined) this.named.set(name, { written, values: this.values - before + 1 });
    return written;
  }

  private convertNamed(node: ParsedNode, path: Path, offset: number): Written {
    const place = this.placeOf(offset);
    if (isSeq(node)) {
      const items = node.items.map((item, index) =>
        this.convert(item as ParsedNode | null, [...path, index]),
      );
      return { kind: "list", items, place };
    }
    if (isMap(node)) return { kind: "table", entries: this.entries(node, path), place };
    return isScalar(node) ? this.scalar(node, offset) : { kind: "nothing", place };
  }

  private scalar(node: Scalar, offset: number): Written {
    const place = this.placeOf(offset);
    const { value } = node;
    const source = node.source ?? "";
    if (value === null || value === undefined) return { kind: "nothing", place };
    if (typeof value === "boolean") return { kind: "boolean", text: source, place };
    if (typeof value === "number") return { kind: "number", value, text: source, place };
    const text = String(value);
    const indent = node.type === "PLAIN" ? 0 : 1;
    const isVerbatim = this.text.startsWith(text, offset + indent);
    return { kind: "text", text, place, ...(isVerbatim ? { indent } : {}) };
  }

  private entries(map: YAMLMap.Parsed, path: Path): ReadonlyMap<string, Entry> {
    const entries = new Map<string, Entry>();
    let previous: string | undefined;
    for (const pair of map.items as readonly Pair<ParsedNode, ParsedNode | null>[]) {
      const key = keyOf(pair.key);
      const offset = pair.key.range[0];
      if (map.flow && previous !== undefined && this.joinDecimals(entries, previous, key, pair)) continue;
      if (entries.has(key)) {
        this.diagnostics.push(
          this.mistake("duplicate-key", [...path, key], offset, `the key ${quoted(key)} stands here twice`, {
            found: shown(key),
            expected: "each key once",
          }),
        );
        continue;
      }
      const value = this.convert(pair.value, [...path, key]);
      const keyPlace = this.placeOf(offset);
      entries.set(key, { keyPlace, value: value.place ? value : { ...value, place: keyPlace } });
      previous = key;
    }
    return entries;
  }

  /**
   * In `{ height: 1,5 cm }` YAML sees the value 1 and a key "5 cm": puts together again what was meant as one, so
   * that it can be refused for what it is.
   */
  private joinDecimals(
    entries: Map<string, Entry>,
    previous: string,
    key: string,
    pair: Pair<ParsedNode, ParsedNode | null>,
  ): boolean {
    const before = entries.get(previous);
    const isHalf = pair.value === null && /^\d+\s*[A-Za-z%"']*$/.test(key);
    if (!isHalf || before?.value.kind !== "number" || !/^[-+]?\d+$/.test(before.value.text)) return false;
    const { place, text } = before.value;
    entries.set(previous, {
      ...before,
      value: { kind: "text", text: `${text},${key}`, ...(place ? { place } : {}) },
    });
    return true;
  }

  private follow(name: string, path: Path, offset: number): Written {
    const target = this.named.get(name);
    const found = `*${shown(name)}`;
    if (target === undefined || target === "open") {
      throw this.stop(
        "bad-reference",
        path,
        offset,
        target === "open"
          ? "a reference repeats what it is part of"
          : "a reference repeats what is not there",
        { found, expected: `a value with the name &${shown(name)} further up` },
      );
    }
    this.references += 1;
    if (this.references > MOST_REFERENCES) {
      throw this.stop("bad-reference", path, offset, "there are too many references", {
        found,
        expected: `at most ${MOST_REFERENCES}`,
      });
    }
    this.count(target.values, path, offset);
    return target.written;
  }

  private count(values: number, path: Path, offset: number): void {
    this.values += values;
    if (this.values <= MOST_VALUES) return;
    throw this.stop("too-many-values", path, offset, "the file holds more values than any garment needs", {
      expected: `at most ${MOST_VALUES}`,
    });
  }

  private stop(
    code: Code,
    path: Path,
    offset: number,
    message: string,
    detail: { readonly found?: string; readonly expected: string },
  ): Stop {
    return new Stop(this.mistake(code, path, offset, message, detail));
  }

  private mistake(
    code: Code,
    path: Path,
    offset: number,
    message: string,
    detail: { readonly found?: string; readonly expected: string },
  ): Diagnostic {
    return { severity: "error", code, message, ...detail, path, place: this.placeOf(offset) };
  }
}

const keyOf = (key: ParsedNode): string => (isScalar(key) ? String(key.source ?? key.value ?? "") : "");
