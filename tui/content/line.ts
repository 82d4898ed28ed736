import stringWidth from "string-width";

/** What a piece of text is, for the eye; the words say the same without it. */
export type Style =
  | "plain"
  | "strong"
  | "dim"
  | "title"
  | "chosen"
  | "accent"
  | "warning"
  | "first"
  | "second";

export interface Span {
  readonly text: string;
  readonly style?: Style;
}

/** One line of the screen from left to right. */
export type Line = readonly Span[];

export const line = (text: string, style: Style = "plain"): Line => [{ text, style }];

export const blank: Line = [];

/** Texts of these are as many columns wide as they have letters: ASCII, and what the screen itself draws with. */
const narrow = /^[\x20-\x7e\u2500-\u259f\u25b8\u25c2\u2026\u2800-\u28ff]*$/;

const widthOf = (text: string): number => (narrow.test(text) ? text.length : stringWidth(text));

export const lineWidth = (spans: Line): number => spans.reduce((sum, { text }) => sum + widthOf(text), 0);

export const plainText = (spans: Line): string => spans.map(({ text }) => text).join("");

/** Cut or filled up with spaces to a width in columns. */
export function fitLine(spans: Line, width: number, cut = "~"): Line {
  const fitted: Span[] = [];
  let left = width;
  for (const span of spans) {
    const wide = widthOf(span.text);
    if (wide <= left) {
      fitted.push(span);
      left -= wide;
      continue;
    }
    if (left > 0) fitted.push({ ...span, text: cutText(span.text, left, cut) });
    return fitted;
  }
  return left > 0 ? [...fitted, { text: " ".repeat(left) }] : fitted;
}

/** A text of at most so many columns; where some of it is left out, `cut` stands at its end, one column wide. */
export function cutText(text: string, width: number, cut = "~"): string {
  if (widthOf(text) <= width) return text;
  if (width <= 0) return "";
  let kept = "";
  let used = 0;
  for (const character of text) {
    const wide = widthOf(character);
    if (used + wide > width - 1) break;
    kept += character;
    used += wide;
  }
  // A letter two columns wide may have left one of them.
  return `${kept}${cut}${" ".repeat(Math.max(0, width - used - 1))}`;
}

/** A text cut or filled up to so many columns. */
export const cell = (text: string, width: number, align: "left" | "right" = "left"): string => {
  const cut = cutText(text, width);
  const fill = " ".repeat(Math.max(0, width - widthOf(cut)));
  return align === "left" ? cut + fill : fill + cut;
};

/** Exactly so many lines. */
export const fitHeight = (lines: readonly Line[], height: number): readonly Line[] =>
  Array.from({ length: height }, (_, index) => lines[index] ?? blank);
