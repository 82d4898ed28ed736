import { describe, expect, test } from "vitest";
import { svgToPng } from "../../../../src/draw/png.ts";
import { sceneOf } from "../../../../src/draw/scene.ts";
import { chartSvg } from "../../../../src/draw/svg.ts";
import { type PaperName, papers } from "../../../../src/sheet/paper.ts";
import { sheetPdf } from "../../../../src/sheet/pdf/sheet-pdf.ts";
import { ownTypeface } from "../../../../src/typeface/typeface.ts";
import { printedPages } from "../../../support/printed-pages.ts";
import { type Sheeted, sheetOfOddNames, sheetOfSample } from "../support/garments.ts";
import { examinePrinted } from "../support/printed-sheet.ts";

const typeface = ownTypeface();

async function pdfOf({ fit, document }: Sheeted, paper: PaperName) {
  const charts = await Promise.all(
    fit.pieces.map(async ({ name }) => {
      const picture = await svgToPng(chartSvg(sceneOf(fit, name), { view: "knitter" }), 400);
      if ("problem" in picture) throw new Error(picture.problem);
      return picture.png;
    }),
  );
  return sheetPdf(document, { paper, charts, typeface });
}

const cases = [
  ["a sleeve", () => sheetOfSample("sleeve")],
  ["a front in two halves above its neck", () => sheetOfSample("front")],
  ["a cable", () => sheetOfSample("cable-sleeve")],
  ["three pieces with odd names", sheetOfOddNames],
] as const;

describe.each(Object.keys(papers) as PaperName[])("on %s", (paper) => {
  test.each(cases)("%s is printed whole, piece by piece, each chart on its own page", async (_, make) => {
    const sheeted = await make();
    const { pdf, missing } = await pdfOf(sheeted, paper);
    const pages = await printedPages(pdf);
    const kinds = examinePrinted(pages, sheeted.document, paper, ({ images }) => images.length > 0);
    const order = kinds.map((kind) => ("piece" in kind ? `${kind.kind} ${kind.piece}` : kind.kind));
    expect(order.filter((one, index) => one !== order[index - 1])).toEqual([
      "before",
      ...sheeted.document.pieces.flatMap(({ piece }) => [`rows ${piece}`, `chart ${piece}`]),
      "after",
    ]);
    expect(kinds.filter(({ kind }) => kind === "chart")).toHaveLength(sheeted.document.pieces.length);
    expect(missing).toEqual([]);
  });
});
