import type { Markup, Pixel } from "../draw/svg/element.ts";
import { label, textWidth } from "../draw/svg/text.ts";

/** A mark on a drawing and the words beside it. */
export interface Labelled {
  readonly at: Pixel;
  readonly words: string;
}

interface Room {
  /** Between these the words have to stay. */
  readonly left: number;
  readonly right: number;
  /** Radius of a mark, and size of the words. */
  readonly dot: number;
  readonly text: number;
}

interface Block {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Where words are tried: to the right or the left of their mark, above or below it. */
const corners = [
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
] as const;

/** The words of each mark where they stand on no other mark and no other words; none where there is no room. */
export function pointLabels(marks: readonly Labelled[], { left, right, dot, text }: Room): readonly Markup[] {
  const blocks: Block[] = marks.map(({ at: { x, y } }) => ({
    left: x - dot,
    right: x + dot,
    top: y - dot,
    bottom: y + dot,
  }));
  return marks.flatMap(({ at: { x, y }, words }): readonly Markup[] => {
    const wide = textWidth(words, text);
    for (const [side, up] of corners) {
      const from = side > 0 ? x + dot + 2 : x - dot - 2 - wide;
      const middle = y + up * (dot + 0.55 * text);
      const block = {
        left: from,
        right: from + wide,
        top: middle - 0.5 * text,
        bottom: middle + 0.5 * text,
      };
      if (block.left < left || block.right > right || blocks.some((other) => meet(block, other))) continue;
      blocks.push(block);
      const place = { x: side > 0 ? from : from + wide, y: middle };
      return [
        label(words, place, { size: text, bold: true, halo: true, anchor: side > 0 ? "start" : "end" }),
      ];
    }
    return [];
  });
}

const meet = (one: Block, other: Block): boolean =>
  one.right > other.left && one.left < other.right && one.bottom > other.top && one.top < other.bottom;
