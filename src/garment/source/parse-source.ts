import {
  type ErrorCode,
  isCollection,
  isScalar,
  LineCounter,
  type ParsedNode,
  parseDocument,
  visit,
  type YAMLError,
} from "yaml";
import type { Code } from "../../diagnostics/codes.ts";
import type { Diagnostic } from "../../diagnostics/diagnostic.ts";
import { shown } from "../../diagnostics/shown.ts";
import { convert } from "./convert.ts";
import { decode, emptyFile } from "./decode.ts";
import { type PlaceOf, placesIn } from "./places.ts";
import { isUnclosed, syntaxWords } from "./syntax-words.ts";
import type { Written } from "./written.ts";
import { YAML_DIALECT } from "./yaml-dialect.ts";

/** Later slips of the pen often follow from the first; more of them than this help nobody. */
const MOST_SYNTAX_MISTAKES = 10;

/**
 * Reads YAML 1.2, of which JSON is a part, into values that know their places.
 *
 * The core schema is used whatever the file asks for, so that dates, `no` and `on` stay text. A file that is not
 * well-formed is not read any further, because what is left of it would be guesswork.
 *
 * @returns the top value, or none where the text can't be read, with what is wrong; never throws
 */
export function parseSource(input: string | Uint8Array): {
  readonly written?: Written;
  readonly diagnostics: readonly Diagnostic[];
} {
  const decoded = decode(input);
  if ("diagnostic" in decoded) return { diagnostics: [decoded.diagnostic] };
  const { text } = decoded;
  const lines = new LineCounter();
  const document = parseDocument<ParsedNode>(text, {
    ...YAML_DIALECT,
    lineCounter: lines,
  });
  const placeOf = placesIn(text, lines.lineStarts);
  const faults = firstOfEachLine([...document.errors, ...document.warnings], lines);
  if (faults.length > 0) {
    const opened = (offset: number): number => openedAt(document.contents, offset);
    return { diagnostics: faults.map((fault) => syntaxDiagnostic(fault, text, placeOf, opened)) };
  }
  const { contents } = document;
  // Nothing but remarks, say.
  if (!contents || (isScalar(contents) && contents.value === null)) return { diagnostics: [emptyFile()] };
  return convert(contents, text, placeOf);
}

const CODE_OF: ReadonlyMap<ErrorCode, Code> = new Map<ErrorCode, Code>([
  ["MULTIPLE_DOCS", "several-documents"],
  ["RESOURCE_EXHAUSTION", "too-deep"],
]);

function syntaxDiagnostic(
  fault: YAMLError,
  text: string,
  placeOf: PlaceOf,
  opened: (offset: number) => number,
): Diagnostic {
  const words = syntaxWords(fault.code, fault.message);
  const offset = isUnclosed(words) ? opened(fault.pos[0]) : fault.pos[0];
  const line = /^[^\r\n]*/.exec(text.slice(offset))?.[0].trim() ?? "";
  return {
    severity: "error",
    code: CODE_OF.get(fault.code) ?? "file-not-yaml",
    ...words,
    ...(line === "" ? {} : { found: shown(line) }),
    path: [],
    place: placeOf(offset),
  };
}

/** Where the innermost quote or bracket begins that is still open at `offset`. */
function openedAt(contents: ParsedNode | null, offset: number): number {
  let opened = offset;
  visit(contents, {
    Node(_key, node) {
      const range = node.range;
      if (!range || range[0] > offset || range[2] < offset) return visit.SKIP;
      const isQuote = isScalar(node) && node.type?.startsWith("QUOTE");
      if (isQuote || (isCollection(node) && node.flow)) opened = range[0];
      return undefined;
    },
  });
  return opened;
}

function firstOfEachLine(faults: readonly YAMLError[], lines: LineCounter): readonly YAMLError[] {
  const first = new Map<number, YAMLError>();
  for (const fault of faults) {
    const { line } = lines.linePos(fault.pos[0]);
    if (!first.has(line)) first.set(line, fault);
    if (first.size === MOST_SYNTAX_MISTAKES) break;
  }
  return [...first.values()];
}
