import type { Content, Section, Table } from "../document/document.ts";
import { beside, type Part, space, stack } from "./flow.ts";
import type { Pen, Place } from "./pen.ts";
import { sizes } from "./sizes.ts";

/** A section's parts; its heading stays with what comes first. */
export const sectionParts = (pen: Pen, { title, content }: Section, place: Place): readonly Part[] => [
  ...headed(
    headingPart(pen, title, place),
    content.flatMap((one) => contentParts(pen, one, place)),
  ),
  space(10),
];

/** A heading and the first part below it stay together. */
export const headed = (heading: Part, parts: readonly Part[]): readonly Part[] => {
  const [first, ...rest] = parts;
  return [first ? stack([heading, first]) : heading, ...rest];
};

export const headingPart = (pen: Pen, words: string, place: Place): Part =>
  stack([pen.text(words, place, { size: sizes.heading, bold: true }), pen.rule(place, 1.5), space(3)]);

export function contentParts(pen: Pen, content: Content, place: Place): readonly Part[] {
  switch (content.kind) {
    case "paragraph":
      return [stack([pen.text(content.text, place, { size: sizes.text }), space(5)])];
    case "facts":
      return [...content.facts.map(({ name, value }) => factPart(pen, name, value, place)), space(5)];
    case "table":
      return [tablePart(pen, content, place)];
  }
}

/** The name above its value, indented, where both do not fit on one line. */
function factPart(pen: Pen, name: string, value: string, place: Place): Part {
  const label = `${name}: `;
  const width = pen.widthOf(label, { size: sizes.text, bold: true });
  const indent = width <= place.width / 3 ? width : 14;
  const text = pen.text(
    value,
    { left: place.left + indent, width: place.width - indent },
    { size: sizes.text },
  );
  const heading = pen.text(label, place, { size: sizes.text, bold: true });
  return indent < width ? stack([heading, text]) : beside(text, heading.draw);
}

const cellGap = 12;

function tablePart(pen: Pen, { caption, head, rows }: Table, place: Place): Part {
  const all = [head, ...rows];
  const wanted = head.map(
    (_, column) =>
      Math.max(...all.map((row) => pen.widthOf(row[column]!, { size: sizes.figures, bold: true }))) + 1,
  );
  const sum = wanted.reduce((total, width) => total + width, 0);
  const room = place.width - cellGap * (head.length - 1);
  const share = Math.min(1, room / sum);
  const widths = wanted.map((width) => share * width);
  const lefts = widths.map(
    (_, column) => place.left + widths.slice(0, column).reduce((total, width) => total + width + cellGap, 0),
  );
  const rowPart = (row: readonly string[], index: number): Part => {
    const cells = row.map((cell, column) =>
      pen.text(
        cell,
        { left: lefts[column]!, width: widths[column]! },
        { size: sizes.figures, bold: index === 0 || column === 0 },
      ),
    );
    return {
      height: Math.max(...cells.map(({ height }) => height)),
      draw: (top) => {
        for (const cell of cells) cell.draw(top);
      },
      split: cells,
    };
  };
  const line = pen.rule(place, 0.5);
  return stack([
    pen.text(caption, place, { size: sizes.figures, bold: true }),
    ...all.flatMap((row, index) => [rowPart(row, index), line]),
    space(6),
  ]);
}
