import { element, type Markup } from "../../draw/svg/element.ts";
import type { PieceSection, Section, SheetDocument } from "../document/document.ts";
import { contentMarkup } from "./content-html.ts";
import { pageRules } from "./page-rules.ts";
import { type EmbeddedTypeface, styleRules } from "./style.ts";
import { blockMarkup } from "./work-html.ts";

export interface HtmlParts {
  /** Each piece's chart as an SVG element, with ids of its own, in the order of the pieces. */
  readonly charts: readonly string[];
  /** Left out where the reader's own fonts have to do. */
  readonly typeface?: EmbeddedTypeface;
}

/**
 * The working sheet as one HTML document that needs nothing else, for A4 and US Letter, a screen and a phone. It is
 * written so that XML parsers read it too (HTML Living Standard, section 13.1, with every element closed).
 */
export function sheetHtml(document: SheetDocument, { charts, typeface }: HtmlParts): string {
  const { title, sections, pieces, finish } = document;
  const html = element(
    "html",
    { lang: "en" },
    element(
      "head",
      {},
      element("meta", { charset: "utf-8" }),
      element("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
      element("title", {}, title),
      raw(`<style>\n${pageRules(document)}\n${styleRules(typeface)}\n</style>`),
    ),
    element(
      "body",
      {},
      element(
        "main",
        {},
        element("section", { class: "before" }, element("h1", {}, title), ...sections.map(sectionMarkup)),
        ...pieces.map((piece, index) => pieceMarkup(piece, index, charts[index])),
        element("section", { class: "after" }, sectionMarkup(finish)),
      ),
    ),
  );
  return `<!DOCTYPE html>\n${html.markup}\n`;
}

const raw = (markup: string): Markup => ({ markup });

const sectionMarkup = ({ title, content }: Section): Markup =>
  element("section", {}, element("h2", {}, title), ...content.map(contentMarkup));

const pieceMarkup = (
  { piece, needles, castOn, blocks }: PieceSection,
  index: number,
  chart: string | undefined,
): Markup =>
  element(
    "section",
    { class: `piece piece-${index + 1}` },
    element("h2", {}, piece),
    ...[needles, ...castOn].map(contentMarkup),
    ...blocks.map((block) => blockMarkup(block, piece)),
    ...(chart === undefined
      ? []
      : [element("section", { class: "chart-page" }, element("h3", {}, `Chart of ${piece}`), raw(chart))]),
  );
