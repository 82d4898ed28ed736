import type { Scene } from "../scene.ts";
import { element, group, type Markup, rounded } from "./element.ts";
import { ink } from "./ink.ts";
import type { Paper } from "./paper.ts";
import { rowNumbersWidth } from "./row-numbers.ts";
import { spreadApart } from "./spread.ts";
import { label, shortened, textWidth } from "./text.ts";

const longestMark = 160;

/** Room for the names of marks, right of the row numbers. */
export const markNamesWidth = (scene: Scene, text: number): number =>
  Math.min(longestMark, Math.max(0, ...markedRows(scene).map(({ names }) => textWidth(names, text)))) +
  1.5 * text;

/** Each row that has marks, with all their names, from the top down. */
function markedRows({ marks }: Scene): readonly { readonly row: number; readonly names: string }[] {
  const rows = [...new Set(marks.map(({ row }) => row))].sort((one, other) => other - one);
  return rows.map((row) => ({
    row,
    names: marks
      .filter((mark) => mark.row === row)
      .map(({ name }) => name)
      .join(", "),
  }));
}

/** A line across the piece at each mark, with its name. */
export function marksMarkup(paper: Paper): Markup {
  const { scene, plot, text } = paper;
  const rows = markedRows(scene);
  const places = spreadApart(
    rows.map(({ row }) => ({ at: paper.boundary(0, row).y })),
    1.2 * text,
    { least: plot.top - 2 * text, most: plot.bottom + 2 * text },
  );
  const end = plot.right + rowNumbersWidth(scene.rows, text);
  return group(
    { class: "marks" },
    rows.flatMap(({ row, names }, index) => {
      const { y } = paper.boundary(0, row);
      return [
        element("path", {
          class: "mark",
          "data-row": row,
          d: `M${rounded(plot.left - 0.6 * text)} ${rounded(y)}H${rounded(plot.right + 0.8 * text)}`,
          stroke: ink.black,
          "stroke-width": 1,
          "stroke-dasharray": "7 3",
        }),
        label(
          shortened(names, text, longestMark),
          { x: end + 0.5 * text, y: places[index]! },
          {
            size: text,
            anchor: "start",
            class: "mark-name",
          },
        ),
      ];
    }),
  );
}
