import { cutText, type Line, line, lineWidth, plainText } from "./line.ts";

/** So many of the items that the one at `at` is among them, with as much before as after it where there is room. */
export function windowAround<Item>(items: readonly Item[], at: number, size: number): readonly Item[] {
  if (items.length <= size) return items;
  const from = Math.max(0, Math.min(items.length - size, at - Math.floor(size / 2)));
  return items.slice(from, from + size);
}

/** At most so many lines; where some are left out, `cut` stands at the end of the last that is there. */
export function firstLines(
  lines: readonly Line[],
  height: number,
  width: number,
  cut: string,
): readonly Line[] {
  if (lines.length <= height) return lines;
  const kept = lines.slice(0, Math.max(0, height));
  const last = kept.at(-1);
  return last ? [...kept.slice(0, -1), goingOn(last, width, cut)] : kept;
}

/** The same for lines of which the one at `at` is among those that are shown. */
export function linesAround(
  lines: readonly Line[],
  at: number,
  height: number,
  width: number,
  cut: string,
): readonly Line[] {
  const shown = windowAround(lines, at, height);
  const last = shown.at(-1);
  return last && last !== lines.at(-1) ? [...shown.slice(0, -1), goingOn(last, width, cut)] : shown;
}

function goingOn(spans: Line, width: number, cut: string): Line {
  const text = plainText(spans).trimEnd();
  const style = spans[0]?.style;
  const room = lineWidth(line(text)) + 2 <= width;
  return line(room ? `${text} ${cut}` : cutText(`${text}  `, width, cut), style);
}
