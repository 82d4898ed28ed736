import type { Path } from "../diagnostics/path.ts";
import { isFirstOnLine, lineStart } from "./lines.ts";
import { parseText, spotAt } from "./source-text.ts";
import { insertion, spliced } from "./splice.ts";
import { sameValue } from "./values.ts";

/**
 * Writes a remark on a line of its own above a key. One that was written there before is replaced; every other remark
 * stays. Where the file has no room for one (JSON, or a key within brackets) the text is returned as it is.
 *
 * @param others what the line above may say instead and is replaced then
 */
export function withRemark(text: string, path: Path, remark: string, others: readonly string[]): string {
  const mark = text.startsWith("\ufeff") ? "\ufeff" : "";
  const source = parseText(text.slice(mark.length));
  const { pair, missing } = spotAt(source, path);
  const key = pair?.key.range[0];
  if (source.json || missing.length > 0 || key === undefined || !isFirstOnLine(source.text, key)) return text;
  const start = lineStart(source.text, key);
  const above = lineStart(source.text, Math.max(0, start - 1));
  const written = source.text.slice(above, start).trim();
  const line = `${source.text.slice(start, key)}# ${remark}${source.lineBreak}`;
  const remarked = [remark, ...others].some((one) => written === `# ${one}`)
    ? spliced(source.text, [{ from: above, to: start, text: line }])
    : spliced(source.text, [insertion(start, line)]);
  return sameValue(parseText(remarked).values, source.values) ? mark + remarked : text;
}
