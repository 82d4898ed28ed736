import { isCollection, isMap, isSeq, type ParsedNode } from "yaml";
import type { Path } from "../diagnostics/path.ts";
import { addition } from "./add.ts";
import { EditError } from "./edit-error.ts";
import { type EditTable, type EditValue, isList, isTable, nested } from "./edit-value.ts";
import { onOneLine } from "./lines.ts";
import { removal } from "./remove.ts";
import { replacement } from "./replace.ts";
import { type Collection, contentEnd, parseText, type SourceText, type Spot, spotAt } from "./source-text.ts";
import { spliced } from "./splice.ts";
import { isSameBut, plainOf, sameValue, valueAt } from "./values.ts";

/**
 * Writes a value into the text of a garment file (YAML or JSON): only the characters of the value at `path` change, or
 * the missing key is added after its neighbours and like them; comments, order and line breaks of all else stay.
 *
 * A value that is there already is left as it is written. A table that is written over several lines is changed key
 * by key, so that the comments inside it stay.
 *
 * @throws EditError where the text cannot be changed there without changing something else
 */
export function setValue(source: string, path: Path, value: EditValue): string {
  if (path.length === 0) throw new EditError("a value needs a key to stand at");
  refuseEndless(value);
  return checked(source, path, value, (text) => withValue(text, path, value));
}

/**
 * Takes a key and its value, or an item of a list, out of the text of a garment file. Where there is none the text
 * is returned as it is; a table or a list that would remain with nothing in it is written as an empty one.
 *
 * @throws EditError where the text cannot be changed there without changing something else
 */
export function removeValue(source: string, path: Path): string {
  return checked(source, path, undefined, (text) => withoutValue(text, path));
}

function withValue(text: string, path: Path, value: EditValue): string {
  const source = parseText(text);
  if (sameValue(valueAt(source.values, path), plainOf(value))) return text;
  const spot = spotAt(source, path);
  const { node, missing } = spot;
  if (missing.length > 0) {
    return isCollection(node)
      ? spliced(text, addition(source, node as Collection, missing, value, spot.flow || node.flow === true))
      : spliced(text, replacement(source, spot, nested(missing, value)));
  }
  if (isTable(value) && isMap(node) && worthKeeping(source, node as ParsedNode, Object.keys(value)))
    return mergedTable(text, path, value);
  if (isList(value) && isSeq(node) && worthKeeping(source, node as ParsedNode, [...value.keys()]))
    return mergedList(text, path, node.items.length, value);
  return spliced(text, replacement(source, spot, value));
}

/** Whether a collection is changed item by item: it keeps its keys, or it is spread over lines that may have comments. */
function worthKeeping({ text }: SourceText, node: ParsedNode, keys: readonly (string | number)[]): boolean {
  if (!isCollection(node) || node.items.length === 0 || keys.length === 0) return false;
  if (!node.flow || !onOneLine(text, node.range[0], contentEnd(node, text))) return true;
  return sameValue(keysOf(node), keys.map(String));
}

function keysOf(node: ParsedNode): readonly string[] {
  if (isMap(node)) return node.items.map(({ key }) => String(key));
  return isSeq(node) ? node.items.map((_, index) => String(index)) : [];
}

function mergedTable(source: string, path: Path, value: EditTable): string {
  const node = spotAt(parseText(source), path).node;
  const dropped = node ? keysOf(node).filter((key) => !Object.hasOwn(value, key)) : [];
  const set = Object.entries(value).reduce(
    (text, [key, item]) => withValue(text, [...path, key], item),
    source,
  );
  return dropped.reduce((text, key) => withoutValue(text, [...path, key]), set);
}

function mergedList(source: string, path: Path, count: number, value: readonly EditValue[]): string {
  const set = value.reduce<string>((text, item, index) => withValue(text, [...path, index], item), source);
  const dropped = Array.from({ length: Math.max(0, count - value.length) }, (_, index) => count - 1 - index);
  return dropped.reduce((text, index) => withoutValue(text, [...path, index]), set);
}

function withoutValue(text: string, path: Path): string {
  const source = parseText(text);
  const spot = spotOrNothing(source, path);
  if (!spot || spot.missing.length > 0) return text;
  return spliced(text, removal(source, spot, spotAt(source, path.slice(0, -1))));
}

/** A path that runs through a value without keys leads to nothing that could be removed. */
function spotOrNothing(source: SourceText, path: Path): Spot | undefined {
  return valueAt(source.values, path) === undefined ? undefined : spotAt(source, path);
}

/** Makes a change and reads it back, so that no edit is ever handed on that says anything else than was asked for. */
function checked(
  source: string,
  path: Path,
  value: EditValue | undefined,
  change: (text: string) => string,
): string {
  const mark = source.startsWith("\ufeff") ? "\ufeff" : "";
  const text = source.slice(mark.length);
  const { values } = parseText(text);
  const result = change(text);
  if (result === text) return source;
  if (!readsAs(values, result, path, value))
    throw new EditError(`${path.join(", ")} cannot be changed here without changing something else`);
  return mark + result;
}

function readsAs(before: unknown, after: string, path: Path, value: EditValue | undefined): boolean {
  try {
    return isSameBut(before, parseText(after).values, path, value);
  } catch (error) {
    if (error instanceof EditError) return false;
    throw error;
  }
}

function refuseEndless(value: EditValue): void {
  if (typeof value === "number" && !Number.isFinite(value))
    throw new EditError(`${value} is not a number to write`);
  if (isList(value)) value.forEach(refuseEndless);
  else if (isTable(value)) Object.values(value).forEach(refuseEndless);
}
