import { shortened } from "../../draw/svg/text.ts";
import type { SheetDocument } from "../document/document.ts";
import { cssPixels, pageMargins, printArea } from "../paper.ts";

/**
 * What stands above and below the text of every printed sheet: margin boxes of named pages (CSS Paged Media 3). The
 * paper itself is left to whoever prints.
 */
export function pageRules({ title, pieces }: SheetDocument): string {
  const { sideMm, endMm } = pageMargins;
  const page = 'counter(page) " of " counter(pages)';
  return [
    `@page { margin: ${endMm}mm ${sideMm}mm; }`,
    ...[title, ...pieces.map(({ piece }) => piece)].map(
      (name, index) =>
        `@page sheet${index} { @top-left { content: ${cssText(name)}; ${marginText} font-weight: bold; } @top-right { content: "page " ${page}; ${marginText} }${index === 0 ? "" : ` @bottom-left { content: ${cssText(title)}; ${marginText} }`} }`,
    ),
    ".before, .after { page: sheet0; }",
    ...pieces.map((_, index) => `.piece-${index + 1} { page: sheet${index + 1}; }`),
  ].join("\n");
}

const marginPx = 14;
const marginText = `font: ${marginPx}px Sheet, sans-serif; color: #000; white-space: nowrap;`;

/** A name that shares its line with the page number. */
const mostPx = 0.8 * cssPixels(printArea("a4").widthMm);

/** A string of CSS; what could end it, or the style element around it, as its number (CSS Syntax 3, section 4.3.7). */
const cssText = (text: string): string =>
  `"${shortened(text, marginPx, mostPx).replace(/["\\<>&\n]/g, (sign) => `\\${sign.codePointAt(0)!.toString(16)} `)}"`;
