import stringWidth from "string-width";
import { printable } from "../../diagnostics/shown.ts";
import { type Attributes, element, type Markup, type Pixel } from "./element.ts";

type Anchor = "start" | "middle" | "end";

/** Where a text stands and how large it is, in pixels; y is the middle of its height. */
export interface TextStyle {
  readonly size: number;
  readonly anchor?: Anchor;
  readonly bold?: boolean;
  /** White around the letters, where they stand on something. */
  readonly halo?: boolean;
  /** Degrees clockwise about its place. */
  readonly turned?: number;
  readonly class?: string;
}

/** Share of the size by which the foot of a digit lies below its middle, in usual sans-serif fonts. */
const footBelowMiddle = 0.35;

/** Share of the size that a letter is wide on average; ample, because the font is the reader's own. */
const letterWidth = 0.6;

export function label(text: string, at: Pixel, style: TextStyle): Markup {
  const { size, anchor, bold, halo, turned } = style;
  const place: Attributes =
    turned === undefined
      ? { x: at.x, y: at.y + footBelowMiddle * size }
      : {
          transform: `translate(${round(at.x)} ${round(at.y)}) rotate(${turned})`,
          y: footBelowMiddle * size,
        };
  return element(
    "text",
    {
      class: style.class,
      ...place,
      "font-size": size,
      "text-anchor": anchor === "start" ? undefined : anchor,
      "font-weight": bold === true ? "bold" : undefined,
      ...(halo === true && {
        stroke: "#fff",
        "stroke-width": size / 3.5,
        "stroke-linejoin": "round",
        "paint-order": "stroke",
      }),
    },
    printable(text),
  );
}

const round = (value: number): number => Math.round(value * 100) / 100;

/** How wide a text comes out, roughly. */
export const textWidth = (text: string, size: number): number => letterWidth * size * stringWidth(text);

/** A text no wider than so many pixels; what is left out is shown by dots. */
export function shortened(text: string, size: number, most: number): string {
  const shown = printable(text);
  if (textWidth(shown, size) <= most) return shown;
  const letters = [...shown];
  while (letters.length > 1 && textWidth(`${letters.join("")}...`, size) > most) letters.pop();
  return `${letters.join("").trimEnd()}...`;
}
