import type { Line, Style } from "../../tui/content/line.ts";

/** One character's place in the picture, in CSS pixels: a terminal's cell, twice as high as wide. */
const [cellWidth, cellHeight] = [8, 16];
const margin = 12;

/** A dark terminal's colours; told apart by the eyes that Okabe and Ito chose theirs for. */
const colours: Readonly<Record<Style, string>> = {
  plain: "#d8dee6",
  strong: "#ffffff",
  dim: "#8b96a5",
  title: "#11151c",
  chosen: "#11151c",
  accent: "#56b4e9",
  warning: "#f0e442",
  first: "#e69f00",
  second: "#56b4e9",
};

const isReversed = (style: Style): boolean => style === "title" || style === "chosen";

/** A frame as a picture. Every run of letters has its own place and length, whatever font the reader has. */
export function frameSvg(lines: readonly Line[], columns: number, title: string): string {
  const [width, height] = [columns * cellWidth + 2 * margin, lines.length * cellHeight + 2 * margin];
  const rows = lines.flatMap((spans, row) => rowElements(spans, margin + row * cellHeight));
  return `${[
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" aria-label="${escaped(title)}" font-family="ui-monospace, 'DejaVu Sans Mono', Menlo, Consolas, monospace" font-size="13">`,
    `<title>${escaped(title)}</title>`,
    `<rect width="${width}" height="${height}" rx="6" fill="#11151c"/>`,
    ...rows,
    "</svg>",
  ].join("\n")}\n`;
}

function rowElements(spans: Line, top: number): readonly string[] {
  const elements: string[] = [];
  let column = 0;
  for (const { text, style = "plain" } of spans) {
    const from = column;
    column += [...text].length;
    if (isReversed(style))
      elements.push(
        `<rect x="${margin + from * cellWidth}" y="${top}" width="${(column - from) * cellWidth}" height="${cellHeight}" fill="#d8dee6"/>`,
      );
    for (const word of wordsOf(text, from)) elements.push(wordElement(word, style, top));
  }
  return elements;
}

interface Word {
  readonly text: string;
  readonly column: number;
}

const wordsOf = (text: string, from: number): readonly Word[] =>
  [...text.matchAll(/\S+/g)].map((match) => ({
    text: match[0],
    column: from + [...text.slice(0, match.index)].length,
  }));

function wordElement({ text, column }: Word, style: Style, top: number): string {
  const bold = style === "strong" || style === "title" || style === "warning" ? ' font-weight="bold"' : "";
  return `<text x="${margin + column * cellWidth}" y="${top + 12}" textLength="${[...text].length * cellWidth}" lengthAdjust="spacingAndGlyphs" fill="${colours[style]}"${bold}>${escaped(text)}</text>`;
}

const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
