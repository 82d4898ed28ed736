import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, test } from "vitest";
import type { SheetDocument } from "../../../../src/sheet/document/document.ts";
import { type PaperName, pageMargins, papers, pdfPoints } from "../../../../src/sheet/paper.ts";
import { createPen } from "../../../../src/sheet/pdf/pen.ts";
import { type PdfParts, sheetPdf } from "../../../../src/sheet/pdf/sheet-pdf.ts";
import { ownTypeface } from "../../../../src/typeface/typeface.ts";
import { type PrintedPage, printedPages } from "../../../support/printed-pages.ts";
import { tinyBlock, tinyDocument, tinyPiece } from "../support/tiny-document.ts";
import { openPage, ownFaces } from "./support/drawn-by-pdfkit.ts";
import { greyPicture } from "./support/picture.ts";

const pdfOf = (changes: Partial<SheetDocument> = {}, parts: Partial<PdfParts> = {}) =>
  sheetPdf(tinyDocument(changes), { paper: "a4", charts: [], typeface: undefined, ...parts });

const pagesOf = async (...given: Parameters<typeof pdfOf>): Promise<readonly PrintedPage[]> =>
  printedPages((await pdfOf(...given)).pdf);

const [side, end] = [pdfPoints(pageMargins.sideMm), pdfPoints(pageMargins.endMm)];

/** Texts between the margins, and those in the upper and in the lower one. */
const partsOf = ({ height, texts }: PrintedPage) => ({
  body: texts.filter(({ bottom }) => bottom > end && bottom < height - end).map(({ words }) => words),
  above: texts.filter(({ bottom }) => bottom <= end),
  below: texts.filter(({ bottom }) => bottom >= height - end),
});

const wordsOf = (texts: PrintedPage["texts"]): readonly string[] => texts.map(({ words }) => words);

describe("the sheet as a PDF", () => {
  test("goes from its sections over each piece and its chart to the finish, each from a new page on", async () => {
    const pages = await pagesOf({ pieces: [tinyPiece("back"), tinyPiece("front")] });
    const rows = ["Done", "Row", "carriage left", "bind off all stitches"];
    const bodies = pages.map((page) => partsOf(page).body);
    expect(bodies[0]).toEqual(["Scarf: working sheet", "Check first", "Knit a swatch."]);
    expect(bodies[1]!.slice(0, 6)).toEqual(["back", "Rows:", "3", "Cast on by hand.", "Rows", "Done"]);
    expect(bodies[1]).toEqual(expect.arrayContaining([...rows, "What to do: back"]));
    expect(bodies[2]).toEqual([]);
    expect(bodies[3]).toEqual(expect.arrayContaining(["front", ...rows, "What to do: front"]));
    expect(bodies[4]).toEqual([]);
    expect(bodies[5]).toEqual(["Finish", "Sew in the ends."]);
    expect(pages).toHaveLength(6);
  });

  test.each(["a4", "letter"] as const)(
    "tells piece and page in the margins of every page of %s",
    async (paper) => {
      const { widthMm, heightMm } = papers[paper];
      const pages = await pagesOf({}, { paper });
      const height = pdfPoints(heightMm);
      // Half of 17 mm less 2 points are 22.09; the letters of the PDF's own sans-serif rise by 0.718 of their size, 10.5.
      const first = 22.09 + 0.718 * 10.5;
      const last = height - 22.09 - 1.3 * 10.5 + 0.718 * 10.5;
      expect(pages.map((page) => [wordsOf(partsOf(page).above), wordsOf(partsOf(page).below)])).toEqual([
        [["Scarf: working sheet", "page 1 of 4"], []],
        [["scarf", "page 2 of 4"], ["Scarf: working sheet"]],
        [["scarf", "page 3 of 4"], ["Scarf: working sheet"]],
        [["Finish", "page 4 of 4"], ["Scarf: working sheet"]],
      ]);
      for (const page of pages) {
        expect(page.width).toBeCloseTo(pdfPoints(widthMm), 1);
        expect(page.height).toBeCloseTo(height, 1);
        const { above, below } = partsOf(page);
        expect(above[0]!.left).toBeCloseTo(side, 1);
        expect(above[1]!.right).toBeCloseTo(pdfPoints(widthMm) - side, 1);
        for (const { bottom } of above) expect(bottom).toBeCloseTo(first, 1);
        for (const { left, bottom } of below) {
          expect(left).toBeCloseTo(side, 1);
          expect(bottom).toBeCloseTo(last, 1);
        }
      }
    },
  );

  // A4 has 527.2 points between its margins. In the margin a letter is taken to be 0.6 * 10.5 = 6.3 wide, and 62 of them
  // stay within three quarters; in the head of the rows it is 6, and 70 stay within 0.8, "What to do: " among them.
  test("cuts a name that is too long for its line", async () => {
    const name = (letters: number) => "i".repeat(letters);
    const pages = await pagesOf({
      title: name(63),
      pieces: [tinyPiece(name(62)), tinyPiece(name(58)), tinyPiece(name(59))],
    });
    expect(partsOf(pages[0]!).above[0]!.words).toBe(`${name(59)}...`);
    expect(partsOf(pages[1]!).above[0]!.words).toBe(name(62));
    expect(partsOf(pages[1]!).below[0]!.words).toBe(`${name(59)}...`);
    expect(partsOf(pages[3]!).body).toContain(`What to do: ${name(58)}`);
    expect(partsOf(pages[5]!).body).toContain(`What to do: ${name(55)}...`);
  });

  test("begins between the margins of its paper", async () => {
    const [first, piece] = await pagesOf();
    const topOf = ({ texts }: PrintedPage, words: string) => texts.find((text) => text.words === words)!;
    const title = first!.texts.filter(({ words }) => words === "Scarf: working sheet").at(0)!;
    expect(title.left).toBeCloseTo(side, 1);
    expect(title.bottom).toBeCloseTo(end + 0.718 * 24, 1);
    expect(topOf(piece!, "Done").left).toBeCloseTo(side, 1);
  });

  test("has its title and what names a page in bold", async () => {
    const pen = createPen((await openPage()).doc, ownFaces);
    const [first, piece] = await pagesOf();
    const wide = ({ left, right }: PrintedPage["texts"][number]): number => right - left;
    const titles = first!.texts.filter(({ words }) => words === "Scarf: working sheet");
    expect(
      titles
        .map(wide)
        .map(Math.round)
        .toSorted((one, other) => one - other),
    ).toEqual(
      [10.5, 24].map((size) => Math.round(pen.widthOf("Scarf: working sheet", { size, bold: true }))),
    );
    const [name, number] = partsOf(piece!).above;
    expect(wide(name!)).toBeCloseTo(pen.widthOf("scarf", { size: 10.5, bold: true }), 1);
    expect(wide(number!)).toBeCloseTo(pen.widthOf("page 2 of 4", { size: 10.5 }), 1);
  });

  test("is called by its title, has an outline of its pieces and tells its language and no time", async () => {
    const task = getDocument({
      data: (await pdfOf({ pieces: [tinyPiece("back"), tinyPiece("front")] })).pdf,
    });
    const document = await task.promise;
    const outline = await document.getOutline();
    expect(outline.map(({ title }) => title)).toEqual(["back", "front", "Finish"]);
    const { info } = (await document.getMetadata()) as unknown as { info: object };
    expect(info).toMatchObject({
      Title: "Scarf: working sheet",
      Language: "en",
      CreationDate: "D:19700101000000Z",
    });
    const preferences = (await document.getViewerPreferences()) as { DisplayDocTitle: boolean };
    expect(preferences.DisplayDocTitle).toBe(true);
    await task.destroy();
  });
});

describe("charts", () => {
  const imagesOf = async (width: number, height: number, paper: PaperName) => {
    const pages = await pagesOf({}, { paper, charts: [greyPicture(width, height)] });
    expect(pages.map(({ images }) => images.length)).toEqual([0, 0, 1, 0]);
    return { page: pages[2]!, image: pages[2]!.images[0]! };
  };

  test.each(["a4", "letter"] as const)(
    "fill %s between its margins, in the middle where they are narrow",
    async (paper) => {
      const high = await imagesOf(2, 20, paper);
      expect(high.image.top).toBeCloseTo(end, 1);
      expect(high.image.bottom).toBeCloseTo(high.page.height - end, 1);
      expect(high.image.left + high.image.right).toBeCloseTo(high.page.width, 1);
      const wide = await imagesOf(20, 2, paper);
      expect(wide.image.left).toBeCloseTo(side, 1);
      expect(wide.image.right).toBeCloseTo(wide.page.width - side, 1);
      expect(wide.image.top).toBeCloseTo(end, 1);
    },
  );
});

describe("rows that go on over several pages", () => {
  const lines = Array.from({ length: 40 }, (_, index) => ({
    kind: "do" as const,
    row: index + 1,
    carriage: "left" as const,
    phrases: [`phrase of row ${index + 1}`],
    running: [],
  }));

  test("have their head at the top of each, and nothing after them has", async () => {
    const pieces = [
      tinyPiece("scarf", {
        blocks: [tinyBlock({ lines }), tinyBlock({ title: "Second", part: "second half" })],
      }),
    ];
    const bodies = (await pagesOf({ pieces })).map((page) => partsOf(page).body);
    const rowPages = bodies.filter((body) => body.some((words) => words.startsWith("phrase of row")));
    expect(rowPages.length).toBeGreaterThan(1);
    for (const body of rowPages.slice(1))
      expect(body.slice(0, 3)).toEqual(["Done", "Row", "What to do: scarf"]);
    const phrases = bodies.flat().filter((words) => words.startsWith("phrase of row"));
    expect(phrases).toEqual(lines.map((line) => line.phrases[0]));
    expect(bodies.at(-1)).toEqual(["Finish", "Sew in the ends."]);
    expect(bodies.at(-2)).toEqual([]);
    const second = bodies.at(-3)!;
    expect(second.slice(second.indexOf("Second"), second.indexOf("Second") + 4)).toEqual([
      "Second",
      "Done",
      "Row",
      "What to do: scarf, second half",
    ]);
  });

  test("no page ends with a heading, nor with the head of a table without a row", async () => {
    const blocks = Array.from({ length: 30 }, (_, index) =>
      tinyBlock({
        title: `Block ${index}`,
        before: Array.from({ length: index % 5 }, () => ({ kind: "paragraph" as const, text: "Wait." })),
        shaping: index % 3 === 0 ? ["decrease 1", "bind off 2"] : [],
      }),
    );
    const pages = await pagesOf({ pieces: [tinyPiece("scarf", { blocks })] });
    expect(pages.length).toBeGreaterThan(5);
    for (const { body } of pages.map(partsOf).filter(({ body: words }) => words.length > 0))
      expect(body.at(-1)).not.toMatch(/^(Block|Done|Row|What to do|Shaping|scarf|-$)/);
    const bodies = pages.flatMap((page) => partsOf(page).body);
    expect(bodies.filter((words) => words.startsWith("Block"))).toEqual(blocks.map(({ title }) => title));
    expect(bodies.filter((words) => words === "Wait.")).toHaveLength(60);
    expect(bodies.filter((words) => words === "bind off 2")).toHaveLength(10);
  });
});

test("a row that is higher than a page goes on over the next, and nothing of it is lost", async () => {
  const phrases = Array.from({ length: 90 }, (_, index) => `hang strand ${index}, then the next`);
  const lines = [{ kind: "do" as const, row: 7, carriage: "left" as const, phrases, running: [] }];
  const pages = await pagesOf({ pieces: [tinyPiece("scarf", { blocks: [tinyBlock({ lines })] })] });
  const said = pages.flatMap((page) => partsOf(page).body).filter((words) => words.startsWith("hang strand"));
  expect(said).toEqual(phrases);
});

test("rows knitted plain that take more boxes than a page holds go on over the next", async () => {
  const carriage = "left" as const;
  const lines = [
    { kind: "do" as const, row: 0, carriage, phrases: ["cast on"], running: [] },
    { kind: "knit" as const, rows: 1500, toRow: 1500, carriage },
  ];
  const pages = await pagesOf({ pieces: [tinyPiece("scarf", { blocks: [tinyBlock({ lines })] })] });
  const tens = pages.flatMap((page) => partsOf(page).body).filter((words) => /^\d+0$/.test(words));
  expect(tens).toEqual(Array.from({ length: 150 }, (_, index) => `${10 * (index + 1)}`));
  expect(partsOf(pages[2]!).body[0]).toBe("Done");
});

test("a text that is longer than a page goes on over the next, and every page is counted", async () => {
  const words = Array.from({ length: 900 }, (_, index) => `word${index}`);
  const pages = await pagesOf({
    sections: [{ title: "Yarn", content: [{ kind: "paragraph", text: words.join(" ") }] }],
  });
  expect(pages.map((page) => partsOf(page).above.at(-1)!.words)).toEqual(
    pages.map((_, index) => `page ${index + 1} of ${pages.length}`),
  );
  const said = pages
    .flatMap((page) => partsOf(page).body)
    .join(" ")
    .match(/word\d+/g);
  expect(said).toEqual(words);
});

describe("the typeface", () => {
  const typeface = ownTypeface();

  test("comes with the PDF, and what it lacks is told", async () => {
    const { pdf, missing } = await pdfOf({ title: "Sleeve ω" }, { typeface });
    expect(missing).toEqual(["ω"]);
    expect(Buffer.from(pdf).toString("latin1")).toMatch(/\/FontName \/\w+\+AtkinsonHyperlegible-Bold/);
  });

  test("is the PDF's own where the program's is not there", async () => {
    const { pdf, missing } = await pdfOf({ title: "Sleeve ω" });
    expect(missing).toEqual(["ω"]);
    const fonts = Buffer.from(pdf)
      .toString("latin1")
      .match(/\/BaseFont \/[\w-]+/g)!;
    expect(new Set(fonts)).toEqual(new Set(["/BaseFont /Helvetica", "/BaseFont /Helvetica-Bold"]));
  });

  test("makes the same bytes of the same document", async () => {
    const [one, other] = [await pdfOf({}, { typeface }), await pdfOf({}, { typeface })];
    expect(Buffer.from(one.pdf).equals(Buffer.from(other.pdf))).toBe(true);
  });
});
