import { counted } from "../../report/words.ts";
import type { SceneField } from "../scene/fields.ts";
import { element, group, type Markup, rounded } from "./element.ts";
import { ink } from "./ink.ts";
import type { Paper } from "./paper.ts";
import { spreadApart } from "./spread.ts";
import { label, shortened, textWidth } from "./text.ts";

/** The panels of the motifs and what is left free beside them. */
export const panelsMarkup = (paper: Paper): Markup =>
  group(
    { class: "panels" },
    paper.scene.fields.flatMap((field) => [
      panel(paper, field),
      ...(["left", "right"] as const).flatMap((side) => sideMargin(paper, field, side)),
    ]),
  );

function panel({ boundary }: Paper, { panel: { from, to }, firstRow, lastRow }: SceneField): Markup {
  const [one, other] = [boundary(from, lastRow), boundary(to, firstRow)];
  return element("rect", {
    class: "panel",
    x: Math.min(one.x, other.x),
    y: one.y,
    width: Math.abs(other.x - one.x),
    height: other.y - one.y,
    fill: "none",
    stroke: ink.quiet,
    "stroke-width": 1.1,
    "stroke-dasharray": "1.5 3",
  });
}

/** How many needles are free beside the panel, at the row where they are fewest. */
function sideMargin(paper: Paper, field: SceneField, side: "left" | "right"): readonly Markup[] {
  const { scene, boundary, text } = paper;
  const needles = field.margins[side];
  if (needles <= 0) return [];
  const row = Math.min(scene.rows, field.closest[side].row + 0.5);
  const inner = field.closest[side].reach;
  const outer = side === "left" ? inner - needles : inner + needles;
  const [from, to] = [boundary(inner, row), boundary(outer, row)];
  const tick = 0.35 * text;
  const long = textWidth(`${needles} needles`, text) < Math.abs(to.x - from.x) - text;
  const words = long ? counted(needles, "needle") : String(needles);
  // The line leaves room for its words, which would be struck through otherwise.
  const [low, high] = [Math.min(from.x, to.x), Math.max(from.x, to.x)];
  const middle = (low + high) / 2;
  const aside = textWidth(words, text) / 2 + 0.2 * text;
  const parts = [
    [low, middle - aside],
    [middle + aside, high],
  ] as const;
  return [
    element("path", {
      class: "side-margin",
      d: [
        ...parts
          .filter(([start, end]) => start < end)
          .map(([start, end]) => `M${rounded(start)} ${rounded(from.y)}H${rounded(end)}`),
        ...[low, high].map((x) => `M${rounded(x)} ${rounded(from.y - tick)}V${rounded(from.y + tick)}`),
      ].join(""),
      fill: "none",
      stroke: ink.black,
      "stroke-width": 0.9,
    }),
    label(
      words,
      { x: middle, y: from.y },
      {
        size: text,
        anchor: "middle",
        halo: true,
      },
    ),
  ];
}

const longestNote = 190;

/** Room that the notes beside the rows take, for each field. */
export function fieldNotesWidth(fields: readonly SceneField[], text: number): number {
  const words = fields.flatMap((field) => notesOf(field).map(({ words }) => words));
  const widest = Math.max(0, ...words.map((one) => textWidth(one, text)));
  return widest === 0 ? 0 : Math.min(longestNote, widest) + 1.6 * text;
}

/** Beside the rows: from where to where each field goes, and the rows its motif and its margins take. */
export const fieldNotes = (paper: Paper, right: number): Markup =>
  group(
    { class: "fields" },
    paper.scene.fields.flatMap((field, index) =>
      fieldNote(paper, field, right - index * fieldNotesWidth(paper.scene.fields, paper.text)),
    ),
  );

function fieldNote(paper: Paper, field: SceneField, right: number): readonly Markup[] {
  const { text } = paper;
  const x = right - 0.5 * text;
  const at = (row: number): number => paper.boundary(0, row).y;
  const rows = [field.toRow, field.lastRow, field.firstRow, field.fromRow];
  const tick = 0.4 * text;
  const notes = notesOf(field).map(({ words, from, to }) => ({ words, at: at((from + to) / 2) }));
  const places = spreadApart(notes, 1.15 * text, { least: paper.plot.top, most: paper.plot.bottom });
  return [
    element("path", {
      class: "field",
      d: [
        `M${rounded(x)} ${rounded(at(field.toRow))}V${rounded(at(field.fromRow))}`,
        ...rows.map((row) => `M${rounded(x - tick)} ${rounded(at(row))}H${rounded(x + tick)}`),
      ].join(""),
      fill: "none",
      stroke: ink.black,
      "stroke-width": 1,
    }),
    ...notes.map(({ words }, index) =>
      label(
        shortened(words, text, longestNote),
        { x: x - 0.7 * text, y: places[index]! },
        {
          size: text,
          anchor: "end",
          halo: true,
        },
      ),
    ),
  ];
}

/** From the top down. */
function notesOf({ fromRow, toRow, firstRow, lastRow, motif, repeats, margins }: SceneField) {
  return [
    { words: `${counted(margins.top, "row")} free`, from: lastRow, to: toRow },
    { words: motif, from: firstRow, to: lastRow },
    {
      words: `${counted(repeats, "repeat")}, ${counted(lastRow - firstRow, "row")}`,
      from: firstRow,
      to: lastRow,
    },
    { words: `${counted(margins.bottom, "row")} free`, from: fromRow, to: firstRow },
  ];
}
