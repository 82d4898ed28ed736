import {
  isAlias,
  isCollection,
  isMap,
  isScalar,
  isSeq,
  type Pair,
  type ParsedNode,
  parseDocument,
  Scalar,
  type YAMLMap,
  type YAMLSeq,
} from "yaml";
import type { Path } from "../diagnostics/path.ts";
import { YAML_DIALECT } from "../garment/source/yaml-dialect.ts";
import { EditError } from "./edit-error.ts";
import { lineBreakOf } from "./lines.ts";

export type Collection = YAMLMap.Parsed | YAMLSeq.Parsed;
export type ParsedPair = Pair<ParsedNode, ParsedNode | null>;

/** A garment file's text with the places of all that is in it. Offsets count from after a byte order mark. */
export interface SourceText {
  readonly text: string;
  readonly root: ParsedNode;
  readonly json: boolean;
  readonly lineBreak: string;
  /** The text's values, tables as maps; for comparing. */
  readonly values: unknown;
}

/** References may be followed so often before a file counts as one made to be slow. */
const mostReferences = 10_000;

/** The text parsed last: what an edit left is what the next one begins with. */
let latest: SourceText | undefined;

/**
 * @throws EditError where the text is not well-formed or has nothing in it
 */
export function parseText(text: string): SourceText {
  if (latest?.text !== text) latest = parsed(text);
  return latest;
}

function parsed(text: string): SourceText {
  const document = parseDocument<ParsedNode>(text, {
    ...YAML_DIALECT,
    keepSourceTokens: true,
  });
  if (document.errors.length > 0) throw new EditError("the file is not well-formed");
  const root = document.contents;
  if (!root) throw new EditError("there is nothing in the file");
  return {
    text,
    root,
    json: isCollection(root) && root.flow === true && isJson(text),
    lineBreak: lineBreakOf(text),
    values: valuesOf(() => document.toJS({ mapAsMap: true, maxAliasCount: mostReferences })),
  };
}

function valuesOf(read: () => unknown): unknown {
  try {
    return read();
  } catch {
    throw new EditError("the file repeats too much by reference");
  }
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

/** How far a path leads into the text. */
export interface Spot {
  /** The value that the path leads to, or the last one on the way that is written; null where a key stands alone. */
  readonly node: ParsedNode | null;
  /** The key with its value, where the value stands in a table. */
  readonly pair?: ParsedPair;
  readonly parent?: Collection;
  readonly index: number;
  /** Whether the value itself stands inside of brackets. */
  readonly flow: boolean;
  /** What of the path is not written. */
  readonly missing: Path;
}

/**
 * @throws EditError where the path runs through a value that has no keys, or through a reference
 */
export function spotAt({ root, text }: SourceText, path: Path): Spot {
  let spot: Spot = { node: root, index: 0, flow: false, missing: [] };
  for (const [depth, step] of path.entries()) {
    const { node } = spot;
    const missing = path.slice(depth);
    if (isMap(node)) {
      const pairs = node.items as readonly ParsedPair[];
      const index = pairs.findIndex(({ key }) => isScalar(key) && String(key.value) === String(step));
      const pair = pairs[index];
      if (!pair) return { ...spot, missing };
      spot = {
        node: pair.value,
        pair,
        parent: node as YAMLMap.Parsed,
        index,
        flow: inside(spot, node),
        missing: [],
      };
    } else if (isSeq(node) && typeof step === "number") {
      const items = node.items as readonly ParsedNode[];
      if (step > items.length || step < 0)
        throw new EditError(`${named(path.slice(0, depth))} has only ${items.length} items`);
      if (step === items.length) return { ...spot, missing };
      spot = {
        node: items[step]!,
        parent: node as YAMLSeq.Parsed,
        index: step,
        flow: inside(spot, node),
        missing: [],
      };
    } else if (isAlias(node)) {
      throw new EditError(
        `${named(path.slice(0, depth))} is a reference (*${node.source}); change it where &${node.source} is written`,
      );
    } else if (isNothing(node)) {
      return { ...spot, missing };
    } else {
      const found = node ? text.slice(node.range[0], contentEnd(node, text)) : "";
      throw new EditError(
        `${named(path.slice(0, depth))} is ${shortened(found)}, which has no ${step} in it`,
      );
    }
  }
  return spot;
}

const inside = (spot: Spot, collection: { readonly flow?: boolean | undefined }): boolean =>
  spot.flow || collection.flow === true;

const isNothing = (node: ParsedNode | null): boolean =>
  node === null || (isScalar(node) && node.value === null);

const named = (path: Path): string => (path.length === 0 ? "the file" : path.join(", "));

const shortened = (text: string): string => {
  const [line = ""] = text.split(/\r?\n/);
  return line.length < text.length || line.length > 40 ? `${line.slice(0, 40)}...` : line;
};

/** Where a value's last character ends; what follows on the line can only be a comment, a comma or a bracket. */
export function contentEnd(node: ParsedNode, text: string): number {
  if (isCollection(node) && !node.flow) {
    const last = node.items.at(-1);
    if (!last) return node.range[1];
    return isMap(node) ? pairEnd(last as ParsedPair, text) : contentEnd(last as ParsedNode, text);
  }
  if (isScalar(node) && (node.type === Scalar.BLOCK_LITERAL || node.type === Scalar.BLOCK_FOLDED))
    return node.range[0] + text.slice(node.range[0], node.range[1]).trimEnd().length;
  return node.range[1];
}

/** Where a key and its value end. */
function pairEnd(pair: ParsedPair, text: string): number {
  const { key, value } = pair;
  // The place of a value that is not written may lie behind a comment.
  const isWritten = value && value.range[0] < value.range[1];
  return isWritten ? contentEnd(value, text) : Math.max(key.range[1], colonEnd(pair) ?? 0);
}

/** The offset just after a key's colon. */
export function colonEnd({ srcToken }: ParsedPair): number | undefined {
  const colon = srcToken?.sep?.find(({ type }) => type === "map-value-ind");
  return colon && colon.offset + 1;
}

/** Where an item of a collection begins: its key, or its value in a list. */
export const itemStart = (item: ParsedPair | ParsedNode): number =>
  "key" in item ? item.key.range[0] : item.range[0];

export const itemEnd = (item: ParsedPair | ParsedNode, text: string): number =>
  "key" in item ? pairEnd(item, text) : contentEnd(item, text);

export const itemsOf = (collection: Collection): readonly (ParsedPair | ParsedNode)[] =>
  collection.items as readonly (ParsedPair | ParsedNode)[];
