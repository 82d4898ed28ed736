import stringWidth from "string-width";
import { describe, expect, test } from "vitest";
import { sheetText } from "../../../../src/sheet/text/sheet-text.ts";
import { type Sheeted, sheetOfOddNames, sheetOfSample } from "../support/garments.ts";

const textOf = ({ fit, sheet }: Sheeted, width: number): string => sheetText(fit, sheet, width);

const cases = [
  ["a sleeve", () => sheetOfSample("sleeve")],
  ["a front in two halves above its neck", () => sheetOfSample("front")],
  ["a cable", () => sheetOfSample("cable-sleeve")],
  ["three pieces with odd names", sheetOfOddNames],
] as const;

describe.each(cases)("%s as text", (_, make) => {
  test.each([40, 60, 80, 100])(
    "keeps within %i columns, without spaces at the end of a line",
    async (width) => {
      for (const line of textOf(await make(), width).split("\n")) {
        expect(stringWidth(line)).toBeLessThanOrEqual(width);
        expect(line).toBe(line.trimEnd());
      }
    },
  );

  test("has every row of the sheet at the head of a line", async () => {
    const sheeted = await make();
    const heads = [...textOf(sheeted, 80).matchAll(/^row +(\d+) {2}/gm)].map(([, row]) => Number(row));
    expect(heads).toEqual(sheeted.sheet.pieces.flatMap(({ rows }) => rows.map(({ row }) => row)));
  });
});

test("tables stand in columns where there is room, and cell by cell with their names where there is none", async () => {
  const sheeted = await sheetOfSample("sleeve");
  expect(textOf(sheeted, 80)).toContain("Piece    Cast-on edge    Widest          Length");
  expect(textOf(sheeted, 40)).toContain("sleeve: cast-on edge 20.0 cm ± 0.3;");
});
