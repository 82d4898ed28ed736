import { isMap } from "yaml";
import { commaAfter } from "./add.ts";
import { EditError } from "./edit-error.ts";
import { isFirstOnLine, lineEnd, lineStart, onOneLine, wholeLines } from "./lines.ts";
import {
  type Collection,
  colonEnd,
  itemEnd,
  itemStart,
  itemsOf,
  type SourceText,
  type Spot,
} from "./source-text.ts";
import { insertion, type Splice } from "./splice.ts";

/**
 * Takes an item out of its collection, with its comma or its lines; comments on lines of their own stay.
 *
 * @param holder where the collection itself stands
 */
export function removal(source: SourceText, spot: Spot, holder: Spot): readonly Splice[] {
  const { parent, index } = spot;
  if (!parent) throw new EditError("the whole file would be removed");
  if (parent.flow) return fromBrackets(source, parent, index);
  return itemsOf(parent).length === 1 ? emptied(source, parent, holder) : fromLines(source, parent, index);
}

function fromBrackets({ text }: SourceText, collection: Collection, index: number): readonly Splice[] {
  const items = itemsOf(collection);
  const [open, end] = collection.range;
  const close = end - 1;
  const item = items[index]!;
  const before = items[index - 1];
  const next = items[index + 1];
  const start = itemStart(item);
  const after = itemEnd(item, text);
  if (!before && !next) return [{ from: open + 1, to: close, text: "" }];
  const limit = next ? itemStart(next) : close;
  const comma = commaAfter(text, after, limit);
  const restOfLine = text.slice(comma ?? after, lineEnd(text, comma ?? after)).trim();
  const hasOwnLines = isFirstOnLine(text, start) && (restOfLine === "" || restOfLine.startsWith("#"));
  if (hasOwnLines) {
    const lines = { ...wholeLines(text, start, comma ?? after), text: "" };
    if (next || comma !== undefined || !before) return [lines];
    const commaBefore = commaAfter(text, itemEnd(before, text), start);
    return commaBefore === undefined
      ? [lines]
      : [{ from: commaBefore - 1, to: commaBefore, text: "" }, lines];
  }
  if (next && (!before || !onOneLine(text, itemEnd(before, text), start)))
    return [{ from: start, to: itemStart(next), text: "" }];
  return [{ from: before ? itemEnd(before, text) : start, to: after, text: "" }];
}

/** The last item of a collection in lines: what remains is written as an empty one. */
function emptied(source: SourceText, collection: Collection, holder: Spot): readonly Splice[] {
  const { text } = source;
  const [from] = collection.range;
  const to = itemEnd(itemsOf(collection)[0]!, text);
  const empty = isMap(collection) ? "{}" : "[]";
  const colon = holder.pair && colonEnd(holder.pair);
  if (colon === undefined || !isFirstOnLine(text, from)) return [{ from, to, text: empty }];
  return [insertion(colon, ` ${empty}`), { ...wholeLines(text, from, to), text: "" }];
}

function fromLines({ text }: SourceText, collection: Collection, index: number): readonly Splice[] {
  const items = itemsOf(collection);
  const item = items[index]!;
  // The dash of an item of a list stands in the column in which the list begins.
  const column = collection.range[0] - lineStart(text, collection.range[0]);
  const start = isMap(collection) ? itemStart(item) : dashOf(collection, index);
  const to = itemEnd(item, text);
  if (isFirstOnLine(text, start)) return [{ ...wholeLines(text, start, to), text: "" }];
  const next = items[index + 1];
  if (!next) throw new EditError("it stands on one line with what holds it");
  const nextStart = isMap(collection) ? itemStart(next) : dashOf(collection, index + 1);
  if (nextStart - lineStart(text, nextStart) !== column)
    throw new EditError("its neighbours are not in line");
  return [{ from: start, to: nextStart, text: "" }];
}

function dashOf({ srcToken }: Collection, index: number): number {
  const dash =
    srcToken?.type === "block-seq"
      ? srcToken.items[index]?.start.find(({ type }) => type === "seq-item-ind")
      : undefined;
  if (!dash) throw new EditError("it does not stand in a list");
  return dash.offset;
}
