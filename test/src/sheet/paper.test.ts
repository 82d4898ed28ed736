import { expect, test } from "vitest";
import { commonPrintArea, cssPixels, pageMargins, pdfPoints, printArea } from "../../../src/sheet/paper.ts";

test("what is printed keeps the margin at both sides and at both ends", () => {
  // 210 - 2 x 12 and 297 - 2 x 17; 215.9 - 24 and 279.4 - 34.
  expect(pageMargins).toEqual({ sideMm: 12, endMm: 17 });
  expect(printArea("a4")).toEqual({ widthMm: 186, heightMm: 263 });
  expect(printArea("letter").widthMm).toBeCloseTo(191.9, 9);
  expect(printArea("letter").heightMm).toBeCloseTo(245.4, 9);
});

test("what fits either paper is as wide as the narrower and as high as the lower one", () => {
  expect(commonPrintArea.widthMm).toBe(186);
  expect(commonPrintArea.heightMm).toBeCloseTo(245.4, 9);
});

test("an inch is 96 pixels of a page and 72 points of a PDF", () => {
  expect(cssPixels(25.4)).toBeCloseTo(96, 9);
  expect(cssPixels(50.8)).toBeCloseTo(192, 9);
  expect(pdfPoints(25.4)).toBeCloseTo(72, 9);
  expect(pdfPoints(12.7)).toBeCloseTo(36, 9);
});
