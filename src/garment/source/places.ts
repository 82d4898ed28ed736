import type { Place } from "../../diagnostics/diagnostic.ts";

/** The place of the character at an offset. */
export type PlaceOf = (offset: number) => Place;

/**
 * @param lineStarts offsets of the first character of each line, rising
 */
export function placesIn(text: string, lineStarts: readonly number[]): PlaceOf {
  // A file is gone through from front to back, a key after its value, and may be one long line: counting goes on from
  // the last place, forward or back.
  let last = { line: 0, offset: 0, column: 1 };
  return (offset) => {
    const line = lineAt(lineStarts, offset);
    if (line !== last.line) last = { line, offset: lineStarts[line] ?? 0, column: 1 };
    // Columns count characters as one sees them, not the halves that some of them are stored in.
    const column =
      offset < last.offset
        ? last.column - [...text.slice(offset, last.offset)].length
        : last.column + [...text.slice(last.offset, offset)].length;
    last = { line, offset, column };
    return { line: line + 1, column };
  };
}

function lineAt(lineStarts: readonly number[], offset: number): number {
  let low = 0;
  let high = lineStarts.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((lineStarts[middle] ?? 0) <= offset) low = middle;
    else high = middle;
  }
  return low;
}
