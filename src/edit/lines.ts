/** Offset at which the line of `offset` begins. */
export const lineStart = (text: string, offset: number): number => text.lastIndexOf("\n", offset - 1) + 1;

/** Offset at which the line of `offset` ends, before its line break. */
export function lineEnd(text: string, offset: number): number {
  const feed = text.indexOf("\n", offset);
  if (feed < 0) return text.length;
  return feed > offset && text[feed - 1] === "\r" ? feed - 1 : feed;
}

/** The line break that the text uses: that of its first line. */
export const lineBreakOf = (text: string): string => /\r?\n/.exec(text)?.[0] ?? "\n";

/** Whether nothing but spaces stands between the start of the line and `offset`. */
export const isFirstOnLine = (text: string, offset: number): boolean =>
  text.slice(lineStart(text, offset), offset).trim() === "";

export const onOneLine = (text: string, from: number, to: number): boolean =>
  !text.slice(from, to).includes("\n");

/** From the start of one line to the end of another, with one line break, so that what remains has whole lines. */
export function wholeLines(
  text: string,
  from: number,
  to: number,
): { readonly from: number; readonly to: number } {
  const start = lineStart(text, from);
  const end = lineEnd(text, to);
  if (end < text.length) return { from: start, to: text.indexOf("\n", end) + 1 };
  // The file ends without a line break, so the one before goes instead.
  const before = start > 1 && text[start - 2] === "\r" ? start - 2 : Math.max(0, start - 1);
  return { from: before, to: end };
}
