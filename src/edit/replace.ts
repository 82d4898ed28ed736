import { isCollection, isScalar, Scalar } from "yaml";
import { EditError } from "./edit-error.ts";
import type { EditValue } from "./edit-value.ts";
import { isFirstOnLine, wholeLines } from "./lines.ts";
import { colonEnd, contentEnd, type SourceText, type Spot } from "./source-text.ts";
import { insertion, type Splice } from "./splice.ts";
import { doubleQuoted, needsEscapes, singleQuoted, writtenText, writtenValue } from "./written-form.ts";

/** Puts a value in the place of one that is written; what stands around it, a comment behind it too, stays. */
export function replacement(source: SourceText, spot: Spot, value: EditValue): readonly Splice[] {
  const { text, json } = source;
  const { node, pair, flow } = spot;
  const written = quotedAsBefore(spot, value) ?? writtenValue(value, { json, flow });
  if (!node) {
    if (!pair) throw new EditError("there is nothing to replace");
    return [insertion(pair.key.range[1], `: ${written}`)];
  }
  const [from] = node.range;
  const to = contentEnd(node, text);
  if (from === to) return [insertion(indicatorEnd(spot) ?? from, ` ${written}`)];
  if (!isCollection(node) || node.flow || !isFirstOnLine(text, from)) return [{ from, to, text: written }];
  const after = indicatorEnd(spot);
  if (after === undefined) throw new EditError("the whole file would be replaced");
  return [insertion(after, ` ${written}`), { ...wholeLines(text, from, to), text: "" }];
}

/** A text keeps the quotes that the one before it had without needing them. */
function quotedAsBefore({ node, flow }: Spot, value: EditValue): string | undefined {
  if (typeof value !== "string" || !isScalar(node)) return undefined;
  if (node.type === Scalar.QUOTE_SINGLE) return needsEscapes.test(value) ? undefined : singleQuoted(value);
  const before = String(node.value);
  const hadToBeQuoted = writtenText(before, { json: false, flow }) !== before;
  return node.type === Scalar.QUOTE_DOUBLE && !hadToBeQuoted ? doubleQuoted(value) : undefined;
}

/** The offset after the colon or the dash behind which the value begins. */
function indicatorEnd({ pair, parent, index }: Spot): number | undefined {
  if (pair) return colonEnd(pair);
  const token = parent?.srcToken;
  const dash =
    token?.type === "block-seq"
      ? token.items[index]?.start.find(({ type }) => type === "seq-item-ind")
      : undefined;
  return dash && dash.offset + 1;
}
