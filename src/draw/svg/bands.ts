import type { BandRepeat } from "../scene/bands.ts";
import type { Span } from "../scene/cloth.ts";
import { element, group, type Markup } from "./element.ts";
import { ink } from "./ink.ts";
import type { Paper } from "./paper.ts";
import { label } from "./text.ts";

/** A banded pattern: every repeat framed, numbered upward at its lower corner, and the edge stitches shaded. */
export const bandsMarkup = (paper: Paper): Markup =>
  group(
    { class: "bands" },
    paper.scene.bands.flatMap((band) => repeatMarkup(paper, band)),
  );

function repeatMarkup(paper: Paper, { tiles, edges, repeat, fromRow, toRow }: BandRepeat): readonly Markup[] {
  const { boundary, text, sight } = paper;
  const box = ({ from, to }: Span, attributes: Record<string, string | number>): Markup => {
    const [one, other] = [boundary(from, toRow), boundary(to, fromRow)];
    return element("rect", {
      ...attributes,
      x: Math.min(one.x, other.x),
      y: one.y,
      width: Math.abs(other.x - one.x),
      height: other.y - one.y,
    });
  };
  const first = sight.mirrored ? tiles.at(-1)! : tiles[0]!;
  const corner = boundary(sight.mirrored ? first.to : first.from, fromRow);
  return [
    // Not quite as far as the frames and the edge of the cloth, which stay whole.
    ...edges.map((span) => {
      const hair = 0.08;
      return box({ from: span.from + hair, to: span.to - hair }, { class: "band-edge", fill: ink.faint });
    }),
    ...tiles.map((span) =>
      box(span, { class: "band-repeat", fill: "none", stroke: ink.black, "stroke-width": 1.4 }),
    ),
    label(
      String(repeat),
      { x: corner.x + 0.4 * text, y: corner.y - 0.8 * text },
      { size: text, bold: true, halo: true, class: "band-number" },
    ),
  ];
}
