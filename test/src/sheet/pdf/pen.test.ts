import { describe, expect, test } from "vitest";
import { createPen, lineHeight } from "../../../../src/sheet/pdf/pen.ts";
import { printedPages } from "../../../support/printed-pages.ts";
import { openPage, operatorsOf, ownFaces } from "./support/drawn-by-pdfkit.ts";

const place = { left: 40, width: 100 };

/** Share of the size by which the letters of the PDF's own sans-serif rise above the line they stand on. */
const ascent = 0.718;

describe("a text", () => {
  test("has a line of 1.3 times its size for each that it is broken into, in either face", async () => {
    const { doc } = await openPage();
    const pen = createPen(doc, ownFaces);
    for (const style of [{ size: 10 }, { size: 20 }, { size: 10, bold: true }, { size: 20, bold: true }]) {
      expect(pen.text("one", place, style).height).toBeCloseTo(lineHeight * style.size);
      expect(pen.text("one\ntwo", place, style).height).toBeCloseTo(2 * lineHeight * style.size);
    }
  });

  // Two words of more than half the width do not stand on one line.
  test("is broken where its place ends, and stands in it", async () => {
    const { doc, finished } = await openPage();
    const pen = createPen(doc, ownFaces);
    const style = { size: 20 };
    expect(pen.widthOf("needles", style)).toBeGreaterThan(50);
    const part = pen.text("needles needles", place, style);
    expect(part.height).toBeCloseTo(2 * lineHeight * 20);
    part.draw(30);
    const [page] = await printedPages(await finished());
    expect(page!.texts.map(({ words }) => words.trim())).toEqual(["needles", "needles"]);
    const [first, second] = page!.texts;
    expect(first!.left).toBeCloseTo(40);
    expect(first!.bottom).toBeCloseTo(30 + ascent * 20);
    expect(second!.left).toBeCloseTo(40);
    expect(second!.bottom).toBeCloseTo(30 + lineHeight * 20 + ascent * 20);
  });

  test("keeps its style, whatever is drawn between its making and its drawing", async () => {
    const { doc, finished } = await openPage();
    const pen = createPen(doc, ownFaces);
    const [small, large] = [
      pen.text("small", place, { size: 10 }),
      pen.text("large", place, { size: 30, bold: true }),
    ];
    large.draw(10);
    small.draw(60);
    const pdf = await finished();
    const [page] = await printedPages(pdf);
    const heights = page!.texts.map(({ words, top, bottom }) => [words, Math.round(bottom - top)]);
    expect(heights).toEqual([
      ["large", 30],
      ["small", 10],
    ]);
    const fonts = Buffer.from(pdf)
      .toString("latin1")
      .match(/\/BaseFont \/[\w-]+/g);
    expect(fonts).toEqual(expect.arrayContaining(["/BaseFont /Helvetica", "/BaseFont /Helvetica-Bold"]));
  });

  test("falls in halves between two words, or in the middle where it is one word", async () => {
    const { doc, finished } = await openPage();
    const pen = createPen(doc, ownFaces);
    let top = 0;
    for (const words of ["hang it on needles", "needles", " needles", "a needles"]) {
      const { split, height } = pen.text(words, { left: 0, width: 300 }, { size: 10 });
      for (const half of split!) {
        half.draw(top);
        top += half.height;
        expect(half.height).toBeCloseTo(height);
      }
    }
    const [page] = await printedPages(await finished());
    expect(page!.texts.map(({ words }) => words)).toEqual([
      "hang it",
      "on needles",
      "nee",
      "dles",
      "nee",
      "dles",
      "a",
      "needles",
    ]);
    for (const { left } of page!.texts) expect(left).toBeCloseTo(0);
  });
});

test("a line is never broken and stands where it is put", async () => {
  const { doc, finished } = await openPage();
  const pen = createPen(doc, ownFaces);
  const words = "one two three four five six seven eight nine ten";
  const style = { size: 20, bold: true };
  expect(pen.widthOf(words, style)).toBeGreaterThan(400);
  pen.write(words, 50, 60, style);
  const [page] = await printedPages(await finished());
  expect(page!.texts).toHaveLength(1);
  expect(page!.texts[0]!.left).toBeCloseTo(50);
  expect(page!.texts[0]!.bottom).toBeCloseTo(60 + ascent * 20);
});

test("letters are as wide as the face and the size make them", async () => {
  const { doc } = await openPage();
  const pen = createPen(doc, ownFaces);
  const width = pen.widthOf("Row", { size: 10 });
  expect(pen.widthOf("Row", { size: 30 })).toBeCloseTo(3 * width);
  expect(pen.widthOf("Row", { size: 10, bold: false })).toBe(width);
  expect(pen.widthOf("Row", { size: 10, bold: true })).toBeGreaterThan(width);
});

test("a rule is a black line in the middle of its 4 points", async () => {
  const { doc, finished } = await openPage();
  const rule = createPen(doc, ownFaces).rule({ left: 40, width: 100 }, 1.5);
  expect(rule.height).toBe(4);
  rule.draw(30);
  expect(operatorsOf(await finished())).toEqual(["1.5 w", "40 32 m", "140 32 l", "0 0 0 SCN", "S"]);
});

test("a box is the black outline of a square", async () => {
  const { doc, finished } = await openPage();
  createPen(doc, ownFaces).box(40, 30, 18);
  expect(operatorsOf(await finished())).toEqual(["1 w", "40 30 18 18 re", "0 0 0 SCN", "S"]);
});
