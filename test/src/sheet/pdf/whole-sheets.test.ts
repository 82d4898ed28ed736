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

test("the same document makes the same bytes", async () => {
  const sheeted = await sheetOfSample("sleeve");
  const [one, other] = [await pdfOf(sheeted, "a4"), await pdfOf(sheeted, "a4")];
  expect(Buffer.from(one.pdf).equals(Buffer.from(other.pdf))).toBe(true);
});

test("characters that the typeface lacks are told, each once", async () => {
  const { document } = await sheetOfSample("sleeve");
  const { missing } = await sheetPdf(
    { ...document, title: "Sleeve 袖 ω 袖" },
    { paper: "a4", charts: [], typeface },
  );
  expect(missing).toEqual(["袖", "ω"]);
});

test("a row that is higher than a page goes on over the next, and nothing of it is lost", async () => {
  const { document } = await sheetOfSample("sleeve");
  const phrases = Array.from({ length: 90 }, (_, index) => `hang strand ${index}, then the next`);
  const piece = {
    ...document.pieces[0]!,
    blocks: [
      {
        part: "whole" as const,
        before: [],
        shaping: [],
        lines: [{ kind: "do" as const, row: 7, carriage: "left" as const, phrases, running: [] }],
      },
    ],
  };
  const { pdf } = await sheetPdf({ ...document, pieces: [piece] }, { paper: "a4", charts: [], typeface });
  const words = (await printedPages(pdf)).flatMap(({ texts }) => texts.map((text) => text.words)).join("\n");
  for (const phrase of phrases) expect(words).toContain(phrase);
});

test("without the program's typeface the PDF's own serves", async () => {
  const { document } = await sheetOfSample("sleeve");
  const { pdf } = await sheetPdf(document, { paper: "a4", charts: [], typeface: undefined });
  const [first] = await printedPages(pdf);
  expect(first!.texts.map(({ words }) => words).join(" ")).toContain("Check first");
});
