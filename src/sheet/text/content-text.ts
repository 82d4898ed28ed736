import stringWidth from "string-width";
import { wrap } from "../../report/wrap.ts";
import type { Content, Facts, Table } from "../document/document.ts";

/** Content as lines of at most `width` characters. */
export function contentText(content: Content, width: number): readonly string[] {
  switch (content.kind) {
    case "paragraph":
      return wrap(`- ${content.text}`, width, 2);
    case "facts":
      return factsText(content, width);
    case "table":
      return tableText(content, width);
  }
}

/** Each fact under its name. */
const factsText = ({ facts }: Facts, width: number): readonly string[] =>
  facts.flatMap(({ name, value }) => wrap(`- ${name}: ${value}`, width, 2));

/** In columns where the width allows it, else row by row with each cell's name. */
function tableText({ caption, head, rows }: Table, width: number): readonly string[] {
  const columns = head.map((name, index) =>
    Math.max(stringWidth(name), ...rows.map((row) => stringWidth(row[index]!))),
  );
  const inColumns = (cells: readonly string[]): string =>
    `  ${cells.map((cell, index) => cell + " ".repeat(columns[index]! - stringWidth(cell))).join("   ")}`.trimEnd();
  const lines = [head, ...rows].map(inColumns);
  if (lines.every((line) => stringWidth(line) <= width)) return [...wrap(`- ${caption}`, width, 2), ...lines];
  return [
    ...wrap(`- ${caption}`, width, 2),
    ...rows.flatMap(([name, ...cells]) =>
      wrap(
        `  ${name}: ${cells.map((cell, index) => `${head[index + 1]!.toLowerCase()} ${cell}`).join("; ")}`,
        width,
        4,
      ),
    ),
  ];
}
