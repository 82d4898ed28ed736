import type { Block, DoLine, KnitLine, WorkLine } from "../document/document.ts";
import { knitPhrase } from "../document/phrases.ts";
import { stepsOf } from "../steps.ts";
import { tickGroups } from "../tick-boxes.ts";
import { contentParts, headed } from "./content-pdf.ts";
import { beside, type Part, space, stack } from "./flow.ts";
import { lineHeight, type Pen, type Place } from "./pen.ts";
import { sizes } from "./sizes.ts";

/** What stands above a block's rows, its heading with the first of it; at least the heading. */
export function beforeRows(pen: Pen, { title, before, shaping }: Block, place: Place): readonly Part[] {
  const heading = stack([
    space(6),
    pen.text(title ?? "Rows", place, { size: sizes.blockHeading, bold: true }),
    space(2),
  ]);
  const indented = { left: place.left + 12, width: place.width - 12 };
  return headed(heading, [
    ...before.flatMap((one) => contentParts(pen, one, place)),
    ...(shaping.length === 0
      ? []
      : headed(
          pen.text("Shaping, which also stands at its rows:", place, { size: sizes.text }),
          shaping.map((words) => dashed(pen.text(words, indented, { size: sizes.text }), pen, place)),
        )),
  ]);
}

const dashed = (part: Part, pen: Pen, { left }: Place): Part =>
  beside(part, (top) => pen.write("-", left + 2, top, { size: sizes.text }));

const doneWidth = 30;
const rowWidth = 72;

/** The head of the table of rows. */
export function rowsHead(pen: Pen, words: string, place: Place): Part {
  const style = { size: sizes.small, bold: true };
  const height = lineHeight * style.size;
  return stack([
    {
      height,
      draw: (top) => {
        pen.write("Done", place.left, top, style);
        pen.write("Row", place.left + doneWidth, top, style);
        pen.write(words, place.left + doneWidth + rowWidth, top, style);
      },
    },
    pen.rule(place, 1.2),
  ]);
}

/** Each step is one part, so that plain rows stay on one sheet with what is done after them. */
export const stepParts = (pen: Pen, lines: readonly WorkLine[], place: Place): readonly Part[] =>
  stepsOf(lines).map((step) =>
    stack([
      space(2),
      ...step.flatMap((line) =>
        line.kind === "knit" ? [knitPart(pen, line, place)] : doParts(pen, line, place),
      ),
      pen.rule(place, 0.5),
    ]),
  );

const tick = { side: 10, apart: 2.5, betweenGroups: 7 };

/** The words, then the boxes group by group, on as many lines as they take. */
function knitPart(pen: Pen, line: KnitLine, place: Place): Part {
  const words = knitPhrase(line);
  const style = { size: sizes.text };
  const right = place.left + place.width;
  const lines: BoxGroup[][] = [[]];
  let left = place.left + pen.widthOf(words, style) + tick.betweenGroups;
  for (const rows of tickGroups(line)) {
    const label = String(rows.at(-1));
    const boxes = rows.length * (tick.side + tick.apart);
    const width = boxes + pen.widthOf(label, { size: sizes.small });
    if (left + width > right) {
      lines.push([]);
      left = place.left;
    }
    lines.at(-1)!.push({ rows: rows.length, label, left, boxes });
    left += width + tick.betweenGroups;
  }
  const [first, ...more] = lines.map((groups) => boxesPart(pen, groups));
  return stack([beside(first!, (top) => pen.write(words, place.left, top, style)), ...more]);
}

/** Boxes side by side, `boxes` points of them, and the number of the last one's row. */
interface BoxGroup {
  readonly rows: number;
  readonly label: string;
  readonly left: number;
  readonly boxes: number;
}

const boxesPart = (pen: Pen, groups: readonly BoxGroup[]): Part => ({
  height: lineHeight * sizes.text + 2,
  draw: (top) => {
    for (const { rows, label, left, boxes } of groups) {
      for (let index = 0; index < rows; index++)
        pen.box(left + index * (tick.side + tick.apart), top + 3, tick.side);
      pen.write(label, left + boxes, top + 1, { size: sizes.small });
    }
  },
});

/** The row's number and box beside its first phrase; more parts only where the row is higher than a page. */
function doParts(pen: Pen, { row, carriage, phrases, running }: DoLine, place: Place): readonly Part[] {
  const left = place.left + doneWidth + rowWidth;
  const words = { left, width: place.width - doneWidth - rowWidth };
  const said = [
    ...phrases.map((phrase) => pen.text(phrase, words, { size: sizes.text })),
    ...running.map((phrase) => pen.text(phrase, words, { size: sizes.running })),
  ];
  const headHeight = lineHeight * (sizes.row + sizes.small);
  const [first, ...rest] = said;
  const height = said.reduce((sum, part) => sum + part.height, 0);
  return [
    beside(first!, (top) => {
      pen.box(place.left, top + 3, 18);
      pen.write(String(row), place.left + doneWidth, top - 1, { size: sizes.row, bold: true });
      pen.write(`carriage ${carriage}`, place.left + doneWidth, top + sizes.row + 2, { size: sizes.small });
    }),
    ...rest,
    space(Math.max(2, headHeight - height)),
  ];
}
