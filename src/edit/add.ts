import { isMap } from "yaml";
import type { Path } from "../diagnostics/path.ts";
import { type EditValue, nested } from "./edit-value.ts";
import { isFirstOnLine, lineEnd, lineStart, onOneLine } from "./lines.ts";
import { type Collection, itemEnd, itemStart, itemsOf, type SourceText } from "./source-text.ts";
import { insertion, type Splice } from "./splice.ts";
import { type Form, writtenEntry, writtenText, writtenValue } from "./written-form.ts";

/**
 * Adds what is missing of a path as the last item of the collection that it leads to, written like its neighbours.
 *
 * @param flow whether the collection stands inside of brackets, its own included
 */
export function addition(
  source: SourceText,
  collection: Collection,
  missing: Path,
  value: EditValue,
  flow: boolean,
): readonly Splice[] {
  const form: Form = { json: source.json, flow };
  return flow
    ? inBrackets(source, collection, flowItem(missing, value, form))
    : onNewLine(source, collection, missing, value, form);
}

function flowItem([first, ...rest]: Path, value: EditValue, form: Form): string {
  const written = writtenValue(nested(rest, value), form);
  return typeof first === "number" ? written : writtenEntry(String(first), written, form);
}

function inBrackets(
  { text, lineBreak }: SourceText,
  collection: Collection,
  item: string,
): readonly Splice[] {
  const [open, end] = collection.range;
  const close = end - 1;
  const last = itemsOf(collection).at(-1);
  if (!last) {
    const padded = isMap(collection) ? ` ${item} ` : item;
    return text.slice(open + 1, close).trim() === ""
      ? [{ from: open + 1, to: close, text: padded }]
      : [insertion(open + 1, `${padded} `)];
  }
  const start = itemStart(last);
  const after = itemEnd(last, text);
  const comma = commaAfter(text, after, close);
  const from = comma ?? after;
  if (!isFirstOnLine(text, start) || onOneLine(text, open, start))
    return [insertion(from, comma === undefined ? `, ${item}` : ` ${item}`)];
  const indent = text.slice(lineStart(text, start), start);
  const line = `${lineBreak}${indent}${item}${comma === undefined ? "" : ","}`;
  const behindComment = onOneLine(text, from, close) ? from : lineEnd(text, from);
  if (comma !== undefined) return [insertion(behindComment, line)];
  return behindComment === from
    ? [insertion(from, `,${line}`)]
    : [insertion(from, ","), insertion(behindComment, line)];
}

/** The offset after the comma that follows an item, if one does; commas in comments are none. */
export function commaAfter(text: string, from: number, to: number): number | undefined {
  const tail = text.slice(from, to).replace(/#[^\r\n]*/g, (comment) => " ".repeat(comment.length));
  const at = tail.indexOf(",");
  return at < 0 ? undefined : from + at + 1;
}

function onNewLine(
  source: SourceText,
  collection: Collection,
  missing: Path,
  value: EditValue,
  form: Form,
): readonly Splice[] {
  const { text, lineBreak } = source;
  const [start] = collection.range;
  const column = start - lineStart(text, start);
  const last = itemsOf(collection).at(-1);
  const after = lineEnd(text, last ? itemEnd(last, text) : start);
  const lines = blockLines(missing, value, column, stepOf(source), form);
  return [insertion(after, lines.map((line) => `${lineBreak}${line}`).join(""))];
}

/** The innermost new table stands in braces, the ones around it have a line each, as motifs and pieces usually do. */
function blockLines(
  [first, ...rest]: Path,
  value: EditValue,
  column: number,
  step: number,
  form: Form,
): readonly string[] {
  const indent = " ".repeat(column);
  if (typeof first === "number")
    return [`${indent}- ${writtenValue(nested(rest, value), { ...form, flow: rest.length > 0 })}`];
  const key = writtenText(String(first), form);
  if (rest.length > 1 && rest.every((part) => typeof part === "string"))
    return [`${indent}${key}:`, ...blockLines(rest, value, column + step, step, form)];
  return [`${indent}${key}: ${writtenValue(nested(rest, value), form)}`];
}

const usualStep = 2;

/** By how many columns the file indents: those of the first value that stands deeper than its key. */
function stepOf({ root, text }: SourceText): number {
  if (!isMap(root) || root.flow) return usualStep;
  const [origin] = root.range;
  for (const { value } of root.items) {
    if (!isMap(value) || value.flow || !value.range) continue;
    const [start] = value.range;
    const step = start - lineStart(text, start) - (origin - lineStart(text, origin));
    if (step > 0) return step;
  }
  return usualStep;
}
