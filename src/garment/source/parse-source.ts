import {
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  parseDocument,
  type Scalar,
} from "yaml";
import type { Code } from "../../diagnostics/codes.ts";
import type { Diagnostic, Place } from "../../diagnostics/diagnostic.ts";
import { decode } from "./decode.ts";
import type { Entry, Written } from "./written.ts";

/** Deeper than any garment: the deepest value of the format lies eight levels down. */
const DEEPEST = 40;

/** More values than thirty sizes with many motifs have; references that repeat themselves are cut off here. */
const MOST_VALUES = 50_000;

/**
 * Reads YAML or JSON into values that know their places.
 *
 * @returns the top value, or undefined where the text cannot be read; never throws
 */
export function parseSource(input: string | Uint8Array): {
  readonly written?: Written;
  readonly diagnostics: readonly Diagnostic[];
} {
  const decoded = decode(input);
  if ("diagnostic" in decoded) return { diagnostics: [decoded.diagnostic] };
  const lines = new LineCounter();
  try {
    const document = parseDocument(decoded.text, {
      lineCounter: lines,
      version: "1.2",
      schema: "core",
      prettyErrors: false,
      keepSourceTokens: false,
    });
    const faults = [...document.errors].map((error) =>
      faultOf(error.code, error.message, lines.linePos(error.pos[0])),
    );
    if (faults.length > 0) return { diagnostics: faults };
    const written = createWalk(document, decoded.text, lines).walk(document.contents, 0);
    return { written, diagnostics: [] };
  } catch (thrown) {
    return { diagnostics: [thrown instanceof Refused ? thrown.diagnostic : tooDeep()] };
  }
}

class Refused extends Error {
  constructor(readonly diagnostic: Diagnostic) {
    super(diagnostic.message);
  }
}

const tooDeep = (place: Place = { line: 1, column: 1 }): Diagnostic => ({
  severity: "error",
  code: "too-deep" satisfies Code,
  message: "lists and keys lie inside one another too deep here",
  expected: `at most ${DEEPEST} levels`,
  path: [],
  place,
});

function createWalk(document: Document, text: string, lines: LineCounter) {
  let values = 0;
  const placeOf = (node: unknown): Place | undefined => {
    const start = rangeOf(node)?.[0];
    if (start === undefined) return undefined;
    const { line, col } = lines.linePos(start);
    return { line, column: col };
  };
  const walk = (node: unknown, depth: number): Written => {
    const place = placeOf(node);
    const at = place && { place };
    if (depth > DEEPEST) throw new Refused(tooDeep(place));
    values++;
    if (values > MOST_VALUES) throw new Refused(tooMany(place));
    if (isAlias(node)) {
      const target = node.resolve(document);
      if (target === undefined) throw new Refused(badReference(node.source, place));
      return { ...walk(target, depth + 1), ...at };
    }
    if (isMap(node)) {
      const entries = new Map<string, Entry>();
      for (const { key, value } of node.items) {
        const keyPlace = placeOf(key);
        const name = isScalar(key) ? String(key.value ?? "") : "?";
        entries.set(name, {
          ...(keyPlace && { keyPlace }),
          value: valueWithin(walk(value, depth + 1), keyPlace),
        });
      }
      return { kind: "table", entries, ...at };
    }
    if (isSeq(node)) return { kind: "list", items: node.items.map((item) => walk(item, depth + 1)), ...at };
    return { ...scalar(node, text), ...at };
  };
  return { walk };
}

/** A key with nothing after it is shown where the key stands. */
const valueWithin = (value: Written, keyPlace: Place | undefined): Written =>
  value.place === undefined && keyPlace ? { ...value, place: keyPlace } : value;

function scalar(node: unknown, text: string): Written {
  if (!isScalar(node) || node.value === null || node.value === undefined) return { kind: "nothing" };
  const { value, source } = node;
  if (typeof value === "number") return { kind: "number", value, text: source ?? String(value) };
  if (typeof value === "boolean") return { kind: "boolean", text: source ?? String(value) };
  const indent = indentOf(node, String(value), text);
  return { kind: "text", text: String(value), ...(indent !== undefined && { indent }) };
}

/** Columns from a text's place to its first character; undefined where it is not written letter by letter. */
function indentOf(node: Scalar, value: string, text: string): number | undefined {
  const start = rangeOf(node)?.[0];
  if (start === undefined) return undefined;
  const quotes = node.type === "PLAIN" ? 0 : 1;
  return text.startsWith(value, start + quotes) ? quotes : undefined;
}

function rangeOf(node: unknown): readonly [number, number, number] | undefined {
  if (isScalar(node) || isMap(node) || isSeq(node) || isAlias(node)) return node.range ?? undefined;
  return undefined;
}

function tooMany(place: Place | undefined): Diagnostic {
  return {
    severity: "error",
    code: "too-many-values" satisfies Code,
    message: "the file holds more values than a garment can need",
    expected: `at most ${MOST_VALUES}, references counted as often as they are used`,
    path: [],
    place: place ?? { line: 1, column: 1 },
  };
}

function badReference(name: string, place: Place | undefined): Diagnostic {
  return {
    severity: "error",
    code: "bad-reference" satisfies Code,
    message: `the reference *${name} leads nowhere`,
    expected: `a value marked &${name} further up`,
    path: [],
    place: place ?? { line: 1, column: 1 },
  };
}

/** What the YAML reader complains of, in words that need no knowledge of YAML. */
const faults: Readonly<Record<string, readonly [code: Code, message: string, expected: string]>> = {
  DUPLICATE_KEY: ["duplicate-key", "this key is written twice in one place", "each key once"],
  MULTIPLE_DOCS: [
    "several-documents",
    "a second document begins here",
    "one garment in one file, without a line ---",
  ],
  TAB_AS_INDENT: ["file-not-yaml", "a tab stands where the line is indented", "spaces"],
  BAD_INDENT: [
    "file-not-yaml",
    "this line is indented differently from its neighbours",
    "keys of one list under one another",
  ],
  BAD_ALIAS: ["bad-reference", "this reference cannot be followed", "a value marked &name further up"],
  MISSING_CHAR: ["file-not-yaml", "a sign is missing here", "a closing bracket, a comma, a quote or a colon"],
  UNEXPECTED_TOKEN: ["file-not-yaml", "this does not belong here", "a key, a colon and a value"],
  MULTILINE_IMPLICIT_KEY: ["file-not-yaml", "this key is missing its colon", "key: value"],
  BLOCK_AS_IMPLICIT_KEY: [
    "file-not-yaml",
    "two keys stand on one line",
    "one key a line, or { key: value, key: value }",
  ],
};

function faultOf(
  yamlCode: string,
  message: string,
  { line, col }: { line: number; col: number },
): Diagnostic {
  const [code, words, expected] = faults[yamlCode] ?? [
    "file-not-yaml" as const,
    `this cannot be read as YAML or JSON${message.includes("\n") ? "" : ` (${message.replace(/\.$/, "")})`}`,
    "key: value, one a line, indented with spaces",
  ];
  return { severity: "error", code, message: words, expected, path: [], place: { line, column: col } };
}
