import { describe, expect, test } from "vitest";
import { shapingPassages } from "../../../../src/sheet/shaping/shaping-passages.ts";
import type { Action, SheetPiece } from "../../../../src/sheet/sheet.ts";
import { pieceWith } from "./support/pieces.ts";

const words = (piece: SheetPiece): readonly string[] => shapingPassages(piece).map((one) => one.words);

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
});
