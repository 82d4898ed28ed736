import type { Ladder } from "../scene/ladders.ts";
import { element, group, type Markup, rounded } from "./element.ts";
import { ink } from "./ink.ts";
import type { Paper } from "./paper.ts";

/** Needles out of work: no cloth, and the yarn of every row across. */
export const laddersMarkup = (paper: Paper): Markup =>
  group(
    { class: "ladders" },
    paper.scene.ladders.flatMap((ladder) => ladderMarkup(paper, ladder)),
  );

function ladderMarkup({ boundary }: Paper, { from, to, fromRow, toRow, needle }: Ladder): readonly Markup[] {
  const [one, other] = [boundary(from, toRow), boundary(to, fromRow)];
  const [left, right] = [Math.min(one.x, other.x), Math.max(one.x, other.x)];
  const rungs = Array.from({ length: toRow - fromRow }, (_, index) => boundary(0, fromRow + index + 0.5).y);
  return [
    element("rect", {
      class: "ladder",
      "data-needle": needle,
      x: left,
      y: one.y,
      width: right - left,
      height: other.y - one.y,
      fill: ink.white,
      stroke: ink.quiet,
      "stroke-width": 0.8,
    }),
    element("path", {
      d: rungs.map((y) => `M${rounded(left)} ${rounded(y)}H${rounded(right)}`).join(""),
      fill: "none",
      stroke: ink.black,
      "stroke-width": 1.1,
    }),
  ];
}
