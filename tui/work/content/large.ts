import { wrap } from "../../../src/report/wrap.ts";
import type { Glyphs } from "../../content/glyphs.ts";
import { type Line, line } from "../../content/line.ts";
import { canDraw, dotsOf, letterDots } from "./letters.ts";

/** How dots become characters: so many dots to a column and to a row, or so many columns to a dot. */
interface Size {
  readonly columnsPerDot: number;
  readonly dotsPerRow: number;
  /** How often each row stands below itself. */
  readonly rowsPerDot: number;
  /** The character for a block of dots, upper row first; dots beyond the edge are empty. */
  readonly draw: (upperLeft: boolean, upperRight: boolean, lowerLeft: boolean, lowerRight: boolean) => string;
}

/** The sixteen quadrant blocks of Unicode (U+2580 to U+259F), by which of the four quarters are full. */
const quadrants = " ▘▝▀▖▌▞▛▗▚▐▜▄▙▟█";

const huge: Size = { columnsPerDot: 4, dotsPerRow: 1, rowsPerDot: 2, draw: (dot) => (dot ? "████" : "    ") };
const full: Size = { columnsPerDot: 2, dotsPerRow: 1, rowsPerDot: 1, draw: (dot) => (dot ? "██" : "  ") };
const half: Size = {
  columnsPerDot: 1,
  dotsPerRow: 2,
  rowsPerDot: 1,
  draw: (upper, _, lower) => (upper ? (lower ? "█" : "▀") : lower ? "▄" : " "),
};
const quarter: Size = {
  columnsPerDot: 0.5,
  dotsPerRow: 2,
  rowsPerDot: 1,
  draw: (a, b, c, d) => quadrants[(a ? 1 : 0) + (b ? 2 : 0) + (c ? 4 : 0) + (d ? 8 : 0)]!,
};
const hugeAscii: Size = {
  columnsPerDot: 4,
  dotsPerRow: 1,
  rowsPerDot: 2,
  draw: (dot) => (dot ? "####" : "    "),
};
const fullAscii: Size = {
  columnsPerDot: 2,
  dotsPerRow: 1,
  rowsPerDot: 1,
  draw: (dot) => (dot ? "##" : "  "),
};
const narrowAscii: Size = {
  columnsPerDot: 1,
  dotsPerRow: 1,
  rowsPerDot: 1,
  draw: (dot) => (dot ? "#" : " "),
};

const sizesOf = ({ drawing }: Glyphs): readonly Size[] =>
  drawing === "ascii" ? [hugeAscii, fullAscii, narrowAscii] : [huge, full, half, quarter];

/**
 * Texts as large as fits into so many columns and rows, each on lines of its own, in letters drawn of blocks; undefined
 * where none of the sizes fits, or where a letter is not among those that are drawn.
 */
export function largeText(
  texts: readonly string[],
  width: number,
  height: number,
  glyphs: Glyphs,
): readonly Line[] | undefined {
  if (!texts.every(canDraw)) return undefined;
  for (const size of sizesOf(glyphs)) {
    const perLine = Math.floor(width / (letterDots.across * size.columnsPerDot));
    if (perLine < 1) continue;
    const lines = texts.flatMap((text) => wrap(text, perLine));
    const rows = lines.flatMap((one) => inSize(dotsOf(one), size)).slice(0, -gapRows(size) || undefined);
    if (rows.length <= height && lines.every((one) => one.length <= perLine)) return rows;
  }
  return undefined;
}

/** Rows below a line that hold no dots at all. */
const gapRows = ({ dotsPerRow, rowsPerDot }: Size): number => Math.floor(rowsPerDot / dotsPerRow);

function inSize(dots: readonly (readonly boolean[])[], size: Size): readonly Line[] {
  const across = size.columnsPerDot < 1 ? 2 : 1;
  const rows: Line[] = [];
  for (let row = 0; row < letterDots.down; row += size.dotsPerRow) {
    let text = "";
    for (let column = 0; column < (dots[0]?.length ?? 0); column += across)
      text += size.draw(
        dots[row]?.[column] ?? false,
        dots[row]?.[column + 1] ?? false,
        dots[row + 1]?.[column] ?? false,
        dots[row + 1]?.[column + 1] ?? false,
      );
    for (let time = 0; time < size.rowsPerDot; time++) rows.push(line(text.trimEnd(), "strong"));
  }
  return rows;
}
