import type { Part } from "../../../../../src/sheet/pdf/flow.ts";
import { lineHeight, type Pen } from "../../../../../src/sheet/pdf/pen.ts";

/** What was drawn, in points from the top left corner. */
export type Mark =
  | {
      readonly text: string;
      readonly left: number;
      readonly top: number;
      /** Absent for a line that is never broken. */
      readonly width?: number;
      readonly size: number;
      readonly bold: boolean;
    }
  | { readonly rule: number; readonly left: number; readonly width: number; readonly top: number }
  | { readonly box: number; readonly left: number; readonly top: number };

/** Shares of the size that a letter is wide; sums of them are exact. */
const letter = { regular: 0.5, bold: 0.75 };

/**
 * A pen of letters of one width that keeps what is drawn with it: a text has as many lines as its letters fill, and falls in two in its middle.
 */
export function recordingPen() {
  const marks: Mark[] = [];
  const widthOf: Pen["widthOf"] = (words, { size, bold }) =>
    words.length * size * (bold === true ? letter.bold : letter.regular);
  const text: Pen["text"] = (words, place, style) => {
    const { size, bold } = style;
    return {
      height: lineHeight * size * Math.max(1, Math.ceil(widthOf(words, style) / place.width)),
      draw: (top) => void marks.push({ text: words, ...place, top, size, bold: bold === true }),
      get split() {
        const half = words.length / 2;
        return [words.slice(0, half), words.slice(half)].map((one) => text(one, place, style));
      },
    };
  };
  const pen: Pen = {
    text,
    write: (words, left, top, { size, bold }) =>
      void marks.push({ text: words, left, top, size, bold: bold === true }),
    widthOf,
    rule: ({ left, width }, thickness) => ({
      height: 4,
      draw: (top) => void marks.push({ rule: thickness, left, width, top }),
    }),
    box: (left, top, side) => void marks.push({ box: side, left, top }),
  };
  /** What a part is drawn as, with its top at the top of the page. */
  const drawn = (part: Part, top = 0): readonly Mark[] => {
    marks.length = 0;
    part.draw(top);
    return [...marks];
  };
  return { pen, drawn };
}

/** Marks whose places are the same but for what sums lose. */
export const roundedMarks = (marks: readonly Mark[]): readonly Mark[] =>
  marks.map(
    (mark) =>
      Object.fromEntries(
        Object.entries(mark).map(([key, value]) => [
          key,
          typeof value === "number" ? Math.round(value * 1000) / 1000 : value,
        ]),
      ) as unknown as Mark,
  );
