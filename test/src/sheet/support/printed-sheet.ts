import { expect } from "vitest";
import type { SheetDocument, WorkLine } from "../../../../src/sheet/document/document.ts";
import { knitPhrase } from "../../../../src/sheet/document/phrases.ts";
import { type PaperName, pageMargins, papers, pdfPoints } from "../../../../src/sheet/paper.ts";
import { stepsOf } from "../../../../src/sheet/steps.ts";
import { tickGroups } from "../../../../src/sheet/tick-boxes.ts";
import { type PrintedPage, pageText, squeezed } from "../../../support/printed-pages.ts";

/** What each page of a printed sheet is about. */
export type PageKind =
  | { readonly kind: "before" | "after" }
  | { readonly kind: "rows" | "chart"; readonly piece: string };

/**
 * Holds a printed sheet to what every one must keep, and tells what its pages are: every row there, whole and in
 * order; piece and page on every sheet; nothing beyond the paper's edges or in the margins but those lines.
 */
export function examinePrinted(
  pages: readonly PrintedPage[],
  document: SheetDocument,
  paper: PaperName,
  isChart: (page: PrintedPage) => boolean,
): readonly PageKind[] {
  for (const page of pages) withinPaper(page, paper);
  for (const page of pages) endsWithNoHeading(page, document);
  const names = document.pieces.map(({ piece }) => piece);
  const texts = pages.map(pageText);
  const pieceOfPage = new Map<number, string>();
  let at = { page: 0, from: 0 };
  for (const { piece, blocks } of document.pieces)
    for (const step of blocks.flatMap(({ lines }) => stepsOf(lines))) {
      at = findNext(texts, squeezed(step.map(printedLine).join(" ")), at);
      pieceOfPage.set(at.page, piece);
    }
  const kinds: PageKind[] = [];
  pages.forEach((page, index) => {
    expect(inTopMargin(page)).toContain(`page${index + 1}of${pages.length}`);
    const piece = pieceOfPage.get(index);
    if (piece !== undefined) kinds.push({ kind: "rows", piece });
    else if (isChart(page))
      kinds.push({
        kind: "chart",
        piece: names.find((name) => inTopMargin(page).startsWith(squeezed(name)))!,
      });
    else kinds.push({ kind: kinds.some(({ kind }) => kind === "rows") ? "after" : "before" });
    const kind = kinds.at(-1)!;
    if ("piece" in kind) expect(inTopMargin(page).startsWith(squeezed(kind.piece))).toBe(true);
  });
  return kinds;
}

/** A line as it is read from the paper, boxes left out. */
const printedLine = (line: WorkLine): string =>
  line.kind === "knit"
    ? [knitPhrase(line), ...tickGroups(line).map((rows) => rows.at(-1))].join(" ")
    : [line.row, "carriage", line.carriage, ...line.phrases, ...line.running].join(" ");

/** Where a text that lies on one page as a whole comes next. */
function findNext(
  texts: readonly string[],
  wanted: string,
  { page, from }: { readonly page: number; readonly from: number },
): { readonly page: number; readonly from: number } {
  for (let index = page; index < texts.length; index++) {
    const found = texts[index]!.indexOf(wanted, index === page ? from : 0);
    if (found >= 0) return { page: index, from: found + wanted.length };
  }
  throw new Error(`no page from the ${page + 1}th on holds as a whole: ${wanted}`);
}

const inTopMargin = ({ texts }: PrintedPage): string =>
  squeezed(
    texts
      .filter(({ bottom }) => bottom < pdfPoints(pageMargins.endMm))
      .map(({ words }) => words)
      .join(" "),
  );

/** What a heading is about begins below it and not on the next page. */
function endsWithNoHeading({ height, texts }: PrintedPage, { sections, pieces }: SheetDocument): void {
  const headings = [
    ...sections.map(({ title }) => title),
    ...pieces.flatMap(({ piece, blocks }) => [piece, ...blocks.map(({ title }) => title ?? "Rows")]),
  ];
  const end = height - pdfPoints(pageMargins.endMm);
  const last = texts
    .filter(({ bottom }) => bottom <= end)
    .toSorted((one, other) => one.bottom - other.bottom)
    .at(-1)!;
  expect(headings).not.toContain(last.words);
  expect(last.words).not.toContain("What to do");
}

/** A point for what paper and letters are rounded by. */
const roundingPoints = 1;

function withinPaper({ width, height, texts, images }: PrintedPage, paper: PaperName): void {
  const { widthMm, heightMm } = papers[paper];
  expect(Math.abs(width - pdfPoints(widthMm))).toBeLessThan(1);
  expect(Math.abs(height - pdfPoints(heightMm))).toBeLessThan(1);
  const side = pdfPoints(pageMargins.sideMm) - roundingPoints;
  for (const { left, right, top, bottom } of [...texts, ...images]) {
    expect(left).toBeGreaterThan(side);
    expect(right).toBeLessThan(width - side);
    expect(top).toBeGreaterThan(0);
    expect(bottom).toBeLessThan(height);
  }
}
