import stringWidth from "string-width";
import type { Fit } from "../../fit/fit.ts";
import { wrap } from "../../report/wrap.ts";
import type { Block, PieceSection, Section } from "../document/document.ts";
import { documentOf } from "../document/document-of.ts";
import type { Sheet } from "../sheet.ts";
import { contentText } from "./content-text.ts";
import { rowsText } from "./rows-text.ts";

/** The whole working sheet as text of at most `width` characters a line. */
export function sheetText(fit: Fit, sheet: Sheet, width: number): string {
  const { title, sections, pieces, finish } = documentOf(fit, sheet);
  return [
    ...heading(title, "=", width),
    ...sections.flatMap((section) => sectionText(section, width)),
    ...pieces.flatMap((piece) => pieceText(piece, width)),
    ...sectionText(finish, width),
  ].join("\n");
}

const heading = (text: string, underline: string, width: number): readonly string[] => [
  ...wrap(text, width),
  underline.repeat(Math.min(stringWidth(text), width)),
  "",
];

const sectionText = ({ title, content }: Section, width: number): readonly string[] => [
  ...heading(title, "-", width),
  ...content.flatMap((one) => contentText(one, width)),
  "",
];

const pieceText = ({ piece, needles, castOn, blocks }: PieceSection, width: number): readonly string[] => [
  ...heading(piece, "-", width),
  ...[needles, ...castOn].flatMap((one) => contentText(one, width)),
  "",
  ...blocks.flatMap((block) => blockText(block, width)),
];

const blockText = ({ title, before, shaping, lines }: Block, width: number): readonly string[] => [
  ...(title === undefined ? [] : heading(title, "~", width)),
  ...before.flatMap((one) => contentText(one, width)),
  ...shaping.flatMap((words) => wrap(`- Shaping: ${words}`, width, 2)),
  ...(before.length + shaping.length > 0 ? [""] : []),
  ...rowsText(lines, width),
  "",
];
