import type { Glyphs } from "./glyphs.ts";
import { cutText, type Line } from "./line.ts";

/** The head of a part of the screen; the part that has the keys is marked. */
export function paneTitle(title: string, inFocus: boolean, width: number, glyphs: Glyphs): Line {
  const text = cutText(inFocus ? `${glyphs.pointer} ${title} ` : `${title} `, width, glyphs.cut);
  const rule = glyphs.level.repeat(Math.max(0, width - text.length));
  return [
    { text, style: inFocus ? "accent" : "strong" },
    { text: rule, style: inFocus ? "accent" : "dim" },
  ];
}
