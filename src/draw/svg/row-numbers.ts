import type { Side } from "../../garment/garment.ts";
import type { Scene } from "../scene.ts";
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
  const { scene } = paper;
  const worked = new Set(scene.workedRows);
  const numbered = numberedRows(paper);
  const shown = new Set(numbered.map(({ row }) => row));
  const columns = (["left", "right"] as const).map((at) =>
    group({ class: `rows-${at}` }, [
      ...numbered.flatMap(({ row, y }) => rowNumber(paper, at, row, y, worked.has(row))),
      ...scene.workedRows.filter((row) => !shown.has(row)).map((row) => tick(paper, at, row)),
    ]),
  );
  return group({ class: "row-numbers" }, columns);
}

/** Whether some row at which something is done has a tick in place of a number. */
export function someRowsUnnumbered(paper: Paper): boolean {
  const shown = new Set(numberedRows(paper).map(({ row }) => row));
  return paper.scene.workedRows.some((row) => !shown.has(row));
}

interface NumberedRow {
  readonly row: number;
  /** Where its number stands. */
  readonly y: number;
}

/** Lines of text by which a number may stand above or below its row, joined to it by a line. */
const furthestAway = 1.8;

/**
 * Rows that get a number, from the top down: those of marks, every one at which something is done and every 10th. Where that many
 * would push one another too far from their rows, the tens go first; then rows keep their numbers in the order
 * of what a knitter looks up: marks and shaping, the ends of motifs, the tens, and what lies between.
 */
function numberedRows(paper: Paper): readonly NumberedRow[] {
  const { scene } = paper;
  const always = [...scene.workedRows, ...scene.marks.map(({ row }) => row)];
  const lineRows = (lineHeight * paper.text) / paper.cell.height;
  const tens = everyTenth(scene);
  const clearTens = tens.filter((ten) => always.every((row) => Math.abs(row - ten) >= lineRows));
  for (const more of [tens, clearTens, []]) {
    const placed = placeNumbers(paper, [...always, ...more]);
    if (placed) return placed;
  }
  const kept: number[] = [];
  for (const row of byImportance(scene))
    if (kept.every((other) => Math.abs(other - row) >= lineRows)) kept.push(row);
  return descending(kept).map((row) => ({ row, y: paper.boundary(0, row).y }));
}

/** Distance from one number to the next, in sizes of text. */
const lineHeight = 0.95;

function placeNumbers(paper: Paper, rows: readonly number[]): readonly NumberedRow[] | undefined {
  const { plot, text } = paper;
  const wanted = descending(rows).map((row) => ({ row, at: paper.boundary(0, row).y }));
  const limits = { least: plot.top - 2 * text, most: plot.bottom + 2 * text };
  if (wanted.length * lineHeight * text > limits.most - limits.least) return undefined;
  const places = spreadApart(wanted, lineHeight * text, limits);
  const near = wanted.every(({ at }, index) => Math.abs(places[index]! - at) <= furthestAway * text);
  return near ? wanted.map(({ row }, index) => ({ row, y: places[index]! })) : undefined;
}

function byImportance(scene: Scene): readonly number[] {
  const { marks, shaping, fields, rows, workedRows } = scene;
  return [
    ...new Set([
      0,
      rows,
      ...marks.map(({ row }) => row),
      ...shaping.filter(({ needles }) => needles > 1).map(({ row }) => row),
      ...fields.flatMap(({ firstRow, lastRow }) => [firstRow, lastRow]),
      ...shaping.map(({ row }) => row),
      ...everyTenth(scene),
      ...workedRows,
    ]),
  ];
}

const everyTenth = ({ rows }: Scene): readonly number[] =>
  Array.from({ length: Math.floor(rows / 10) + 1 }, (_, index) => index * 10);

const descending = (rows: readonly number[]): readonly number[] =>
  [...new Set(rows)].sort((one, other) => other - one);

/** A short line at a row that has no room for its number. */
function tick({ plot, text, boundary }: Paper, at: Side, row: number): Markup {
  const outward = at === "left" ? -1 : 1;
  const edge = at === "left" ? plot.left : plot.right;
  return element("path", {
    class: "row-tick",
    "data-row": row,
    d: `M${rounded(edge + outward * 0.15 * text)} ${rounded(boundary(0, row).y)}h${rounded(outward * 0.6 * text)}`,
    stroke: ink.black,
    "stroke-width": 1,
  });
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
