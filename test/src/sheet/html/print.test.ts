import { describe, expect, test } from "vitest";
import { printedHtml } from "../../../../src/cli/print-sheet.ts";
import { sceneOf } from "../../../../src/draw/scene.ts";
import { chromium, printHtml } from "../../../support/print-html.ts";
import { type PrintedPage, pageText, printedPages, squeezed } from "../../../support/printed-pages.ts";
import { sheetOfOddNames, sheetOfSample } from "../support/garments.ts";
import { examinePrinted } from "../support/printed-sheet.ts";

if (chromium === undefined)
  console.warn("No Chromium on the path or in EVENROW_CHROMIUM: how HTML sheets print is not tested.");

const cases = [
  ["a sleeve", () => sheetOfSample("sleeve"), { least: 7, most: 13 }],
  ["a front in two halves above its neck", () => sheetOfSample("front"), { least: 10, most: 17 }],
  ["a cable", () => sheetOfSample("cable-sleeve"), { least: 6, most: 12 }],
  ["three pieces with odd names", sheetOfOddNames, { least: 12, most: 24 }],
] as const;

const isChart = (page: PrintedPage): boolean => pageText(page).includes("astheknitterseesit");

describe.skipIf(chromium === undefined).each(["a4", "letter"] as const)("printed on %s", (paper) => {
  test.each(cases)("%s comes whole, piece by piece, each chart on its own page", async (_, make, count) => {
    const { fit, sheet, document } = await make();
    const html = await printedHtml(fit, sheet);
    const pages = await printedPages(await printHtml(html, paper === "a4" ? "A4" : "letter"));
    const kinds = examinePrinted(pages, document, paper, isChart);
    const order = kinds.map((kind) => ("piece" in kind ? `${kind.kind} ${kind.piece}` : kind.kind));
    expect(order.filter((one, index) => one !== order[index - 1])).toEqual([
      "before",
      ...document.pieces.flatMap(({ piece }) => [`rows ${piece}`, `chart ${piece}`]),
      "after",
    ]);
    expect(pages.length).toBeGreaterThanOrEqual(count.least);
    expect(pages.length).toBeLessThanOrEqual(count.most);
    const charts = pages.filter((_page, index) => kinds[index]!.kind === "chart");
    expect(charts).toHaveLength(document.pieces.length);
    fit.pieces.forEach(({ name }, index) => {
      const text = pageText(charts[index]!);
      for (const { name: mark } of sceneOf(fit, name).marks) expect(text).toContain(squeezed(mark));
      // The legend comes last in a chart, so nothing of it went to another page.
      expect(text).toContain("caston(somanystitches)");
    });
  });
});
