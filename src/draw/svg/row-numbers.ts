import type { Side } from "../../garment/garment.ts";
import { sideInSight } from "../view.ts";
import { element, group, type Markup, type Pixel, rounded } from "./element.ts";
import { ink } from "./ink.ts";
import type { Paper } from "./paper.ts";
import { spreadApart } from "./spread.ts";
import { label, textWidth } from "./text.ts";

/** Space between the cells and the numbers beside them: room for arrowheads, counts and the carriage. */
const aside = (paper: Pick<Paper, "text">): number => 2.4 * paper.text;

/** Room beside the cells for row numbers and the carriage. */
export const rowNumbersWidth = (rows: number, text: number): number =>
  aside({ text }) + textWidth(String(rows), text) + 0.4 * text;

/** Row numbers at both sides, and the carriage at the side where it rests. */
export function rowNumbers(paper: Paper): Markup {
  const { scene, text, plot } = paper;
  const rows = numberedRows(paper);
  const places = spreadApart(
    rows.map((row) => ({ at: paper.boundary(0, row).y })),
    0.95 * text,
    { least: plot.top - 2 * text, most: plot.bottom + 2 * text },
  );
  const worked = new Set(scene.workedRows);
  const columns = (["left", "right"] as const).map((at) =>
    group(
      { class: `rows-${at}` },
      rows.flatMap((row, index) => rowNumber(paper, at, row, places[index]!, worked.has(row))),
    ),
  );
  return group({ class: "row-numbers" }, columns);
}

/** Share of the room that numbers may fill before they push one another too far from their rows. */
const fullest = 0.8;

/**
 * Rows that get a number, from the top down: every one at which something is done and every 10th; where the room is
 * too small for that many, what is done goes before the tens, which thin out first.
 */
function numberedRows({ scene, text, plot }: Paper): readonly number[] {
  const room = Math.floor((plot.bottom - plot.top + 4 * text) / (0.95 * text));
  const descending = (rows: readonly number[]): readonly number[] =>
    [...new Set(rows)].sort((one, other) => other - one);
  for (const step of [10, 20, 50, 100]) {
    const tens = Array.from({ length: Math.floor(scene.rows / step) + 1 }, (_, index) => index * step);
    const rows = descending([...scene.workedRows, ...tens]);
    if (rows.length <= fullest * room) return rows;
  }
  const thinned = Math.ceil(scene.workedRows.length / Math.max(1, room));
  return descending(scene.workedRows.filter((_, index) => index % thinned === 0));
}

function rowNumber(paper: Paper, at: Side, row: number, y: number, worked: boolean): readonly Markup[] {
  const { plot, scene, sight, text } = paper;
  const outward = at === "left" ? -1 : 1;
  const edge = at === "left" ? plot.left : plot.right;
  const own = paper.boundary(0, row).y;
  const numberAt = edge + outward * aside(paper);
  const rests = sideInSight(scene.carriage[row]!, sight) === at;
  return [
    element("path", {
      d: `M${rounded(edge + outward * 0.15 * text)} ${rounded(own)}L${rounded(numberAt - outward * 1.5 * text)} ${rounded(y)}`,
      stroke: worked ? ink.quiet : ink.faint,
      "stroke-width": 0.6,
    }),
    ...(rests ? [carriage({ x: numberAt - outward * 0.85 * text, y }, 0.36 * text)] : []),
    label(
      String(row),
      { x: numberAt, y },
      {
        size: text,
        anchor: at === "left" ? "end" : "start",
        bold: worked,
        class: "row-number",
      },
    ),
  ];
}

/** The carriage from the side: a body with a handle. */
export const carriage = ({ x, y }: Pixel, size: number): Markup =>
  element("path", {
    class: "carriage",
    d: [
      `M${rounded(x - 1.3 * size)} ${rounded(y + size)}h${rounded(2.6 * size)}v${rounded(-size)}h${rounded(-2.6 * size)}z`,
      `M${rounded(x - 0.7 * size)} ${rounded(y)}v${rounded(-0.9 * size)}h${rounded(1.4 * size)}v${rounded(0.9 * size)}`,
    ].join(""),
    fill: ink.black,
    stroke: ink.black,
    "stroke-width": 0.4,
  });
