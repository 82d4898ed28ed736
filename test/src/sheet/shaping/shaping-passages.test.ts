import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { shapingPassages } from "../../../../src/sheet/shaping/shaping-passages.ts";
import type { Action, SheetPiece } from "../../../../src/sheet/sheet.ts";
import { pieceWith } from "./support/pieces.ts";
import { stepsOfSheet, stepsOfWords } from "./support/same-steps.ts";

const words = (piece: SheetPiece): readonly string[] => shapingPassages(piece).map((one) => one.words);

const step: Action = { act: "increase", side: "left", needles: 1 };

describe("shaping in words", () => {
  test("all short gaps before all long ones are said as the published rule says them", () => {
    const rows = [12, 18, 24, 30, 36, 42, 48, 54, 60, 67, 74, 81];
    const both = (row: number): [number, ...Action[]] => [
      row,
      { act: "increase", side: "left", needles: 1 },
      { act: "increase", side: "right", needles: 1 },
    ];
    expect(words(pieceWith(rows.map(both)))).toEqual([
      "increase 1 at each side on row 12, then every 6th row 8 times, every 7th row 3 times, to row 81",
    ]);
  });

  test("bind-offs in steps say the number of stitches where it changes", () => {
    const off = (row: number, needles: number): [number, Action] => [
      row,
      { act: "bind-off", side: "right", needles },
    ];
    expect(
      words(
        pieceWith([off(80, 3), off(82, 2), off(84, 2), [86, { act: "decrease", side: "right", needles: 1 }]]),
      ),
    ).toEqual([
      "bind off 3 at the right on row 80, then 2 every other row twice, to row 84",
      "decrease 1 at the right on row 86",
    ]);
  });

  test("sides that differ are said side by side, and a piece without shaping says nothing", () => {
    const piece = pieceWith([
      [10, { act: "increase", side: "left", needles: 1 }],
      [11, { act: "increase", side: "right", needles: 1 }],
      [13, { act: "increase", side: "right", needles: 1 }],
    ]);
    expect(words(piece)).toEqual([
      "increase 1 at the left on row 10",
      "increase 1 at the right on rows 11 and 13",
    ]);
    expect(words(pieceWith([[0, { act: "cast-on", from: -50, to: 50 }]]))).toEqual([]);
  });

  test.each<[Action, string]>([
    [{ act: "increase", side: "left", needles: 1 }, "increase 1 at the left on row 8"],
    [{ act: "decrease", side: "right", needles: 1 }, "decrease 1 at the right on row 8"],
    [{ act: "cast-on", side: "left", needles: 5 }, "cast on 5 at the left on row 8"],
    [{ act: "bind-off", side: "left", needles: 3, edge: "neck" }, "bind off 3 at the neck edge on row 8"],
    [{ act: "bind-off", from: -4, to: 4, yarn: "separate" }, "bind off 8 at the centre on row 8"],
  ])("a single step is its act, its stitches, its place and its row: %s", (action, said) => {
    expect(shapingPassages(pieceWith([[8, action]]))).toEqual([
      { fromRow: 8, toRow: 8, block: "whole", words: said },
    ]);
  });

  test.each<[number[], string]>([
    [[1], "every row 11 times, to row 31"],
    [[2], "every other row 11 times, to row 42"],
    [[3], "every 3rd row 11 times, to row 53"],
    [[1, 2], "every 1st and 2nd row by turns 11 times, to row 36"],
    [[21, 22, 23], "every 21st, 22nd and 23rd row by turns 11 times, to row 261"],
  ])("gaps of %s rows by turns are said by their ordinals", (gaps, said) => {
    let row = 20;
    const steps = Array.from({ length: 11 }, (_, index) => (row += gaps[index % gaps.length]!));
    expect(shapingPassages(pieceWith([20, ...steps].map((at) => [at, step])))).toEqual([
      {
        fromRow: 20,
        toRow: row,
        block: "whole",
        words: `increase 1 at the left on row 20, then ${said}`,
      },
    ]);
  });

  test("where the last part is a list of rows, nothing is said of the end", () => {
    const steps = [10, 14, 18, 22, 26, 30, 34, 38, 42, 46, 50, 57];
    expect(words(pieceWith(steps.map((row) => [row, step])))).toEqual([
      "increase 1 at the left on row 10, then every 4th row 10 times, on row 57",
    ]);
  });

  test("each half above a neck has its own passages after those of the whole", () => {
    const neck: Action = { act: "decrease", side: "right", needles: 1, edge: "neck" };
    const piece = pieceWith([
      [30, { act: "bind-off", from: -5, to: 5, yarn: "separate" }, { act: "hold", from: 6, to: 20 }],
      [31, neck],
      [33, neck],
      [30, { act: "work", from: 6, to: 20 }],
      [32, { ...neck, side: "left" }],
    ]);
    expect(shapingPassages(piece).map(({ block, words: said }) => `${block}: ${said}`)).toEqual([
      "whole: bind off 10 at the centre on row 30",
      "first half: decrease 1 at the neck edge on rows 31 and 33",
      "second half: decrease 1 at the neck edge on row 32",
    ]);
  });

  test("a knitter with nothing but the words shapes the sheet's rows", () => {
    const step = fc.record({
      gap: fc.integer({ min: 1, max: 3 }),
      side: fc.constantFrom("left" as const, "right" as const),
      needles: fc.integer({ min: 2, max: 3 }),
    });
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 20 }), (steps) => {
        let row = 0;
        const piece = pieceWith(
          steps.map(({ gap, side, needles }): [number, Action] => {
            row += gap;
            return [row, { act: "bind-off", side, needles }];
          }),
        );
        expect(stepsOfWords(piece)).toEqual(stepsOfSheet(piece));
      }),
      { seed: 7, numRuns: 50 },
    );
  });
});
