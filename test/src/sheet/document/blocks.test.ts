import { describe, expect, test } from "vitest";
import { blocksOf } from "../../../../src/sheet/document/blocks.ts";
import type { Action, SheetPiece, SheetRow } from "../../../../src/sheet/sheet.ts";

const words = { columns: () => 1, running: () => [] };

const row = (
  number: number,
  carriage: SheetRow["carriage"],
  needles: SheetRow["needles"],
  ...done: readonly Action[]
): SheetRow => ({ row: number, carriage, needles, do: done });

const increase = { act: "increase", side: "left", needles: 1 } as const;
const decrease = { act: "decrease", side: "right", needles: 1 } as const;

/** Row numbers and kinds of a block's lines. */
const inShort = (lines: ReturnType<typeof blocksOf>[number]["lines"]): readonly string[] =>
  lines.map((line) => (line.kind === "knit" ? `knit to ${line.toRow}` : `row ${line.row}`));

test("a piece without a neck is one block without a title, with its shaping said above", () => {
  const piece: SheetPiece = {
    piece: "pocket",
    needlesAtStart: [-5, 5],
    rowsInAll: 9,
    rows: [
      row(0, "right", [-5, 5], { act: "cast-on", from: -5, to: 5 }),
      row(4, "right", [-6, 5], increase),
      row(9, "left", [], { act: "bind-off", from: -6, to: 5 }),
    ],
  };
  const blocks = blocksOf(piece, words);
  expect(blocks).toHaveLength(1);
  const [{ lines, ...rest }] = blocks as [ReturnType<typeof blocksOf>[number]];
  expect(rest).toEqual({ part: "whole", before: [], shaping: ["increase 1 at the left on row 4"] });
  expect(inShort(lines)).toEqual(["row 0", "knit to 4", "row 4", "knit to 9", "row 9"]);
});

describe("a piece with a neck", () => {
  const [front, first, second] = [
    [-20, 20],
    [5, 20],
    [-20, -5],
  ] as const;
  const piece: SheetPiece = {
    piece: "front",
    needlesAtStart: front,
    rowsInAll: 36,
    rows: [
      row(0, "right", front, { act: "cast-on", from: -20, to: 20 }),
      row(10, "right", front, increase),
      row(
        30,
        "right",
        first,
        { act: "bind-off", from: -4, to: 4, yarn: "separate" },
        { act: "hold", from: -20, to: -5 },
      ),
      row(32, "right", [5, 19], decrease),
      row(36, "right", [], { act: "bind-off", from: 5, to: 19 }),
      row(30, "right", second, { act: "work", from: -20, to: -5 }),
      row(33, "left", [-19, -5], { act: "decrease", side: "left", needles: 1 }),
      row(36, "right", [], { act: "bind-off", from: -19, to: -5 }),
    ],
  };
  const blocks = blocksOf(piece, words);

  test("is three blocks, the halves with their side and needles in their titles", () => {
    expect(blocks.map(({ part, title }) => [part, title])).toEqual([
      ["whole", "Up to the neck"],
      ["first half", "First half: the right one, R5 to R20"],
      ["second half", "Second half: the left one, L20 to L5"],
    ]);
  });

  test("tells before each half what is in work, where it starts and what becomes of the other", () => {
    expect(blocks.map(({ before }) => before.map(({ text }) => text))).toEqual([
      [],
      [
        "16 needles, R5 to R20; it starts at row 30 with the carriage at the right. The left half waits on hold, L20 to L5.",
      ],
      [
        "16 needles, L20 to L5; it starts at row 30 with the carriage at the right. Set the row counter back to 30.",
      ],
    ]);
  });

  test("has each block's own shaping above it", () => {
    expect(blocks.map(({ shaping }) => shaping)).toEqual([
      // L4 to R4 are eight.
      ["increase 1 at the left on row 10", "bind off 8 at the centre on row 30"],
      ["decrease 1 at the right on row 32"],
      ["decrease 1 at the left on row 33"],
    ]);
  });

  test("has every row in its own block, the halves counted on from the neck's row", () => {
    expect(blocks.map(({ lines }) => inShort(lines))).toEqual([
      ["row 0", "knit to 10", "row 10", "knit to 30", "row 30"],
      ["knit to 32", "row 32", "knit to 36", "row 36"],
      ["row 30", "knit to 33", "row 33", "knit to 36", "row 36"],
    ]);
    expect([blocks[1], blocks[2]].map((block) => block!.lines.find(({ kind }) => kind === "knit"))).toEqual([
      { kind: "knit", rows: 2, toRow: 32, carriage: "right" },
      { kind: "knit", rows: 3, toRow: 33, carriage: "left" },
    ]);
  });

  test("begins with the left half where that is the one that is not held, also where they meet at the centre", () => {
    const across: SheetPiece = {
      ...piece,
      rows: [
        row(0, "left", front, { act: "cast-on", from: -20, to: 20 }),
        row(30, "left", [-20, -1], { act: "hold", from: 1, to: 20 }),
        row(36, "left", [], { act: "bind-off", from: -20, to: -1 }),
        row(30, "left", [1, 20], { act: "work", from: 1, to: 20 }),
        row(36, "left", [], { act: "bind-off", from: 1, to: 20 }),
      ],
    };
    const [, one, other] = blocksOf(across, words);
    expect(one!.title).toBe("First half: the left one, L20 to L1");
    expect(one!.before[0]!.text).toContain(
      "with the carriage at the left. The right half waits on hold, R1 to R20.",
    );
    expect(other!.title).toBe("Second half: the right one, R1 to R20");
    expect(other!.before[0]!.text).toMatch(/^20 needles, R1 to R20; /);
  });

  test("of which nothing is worked before the neck has its halves all the same", () => {
    const [onset] = piece.rows;
    const atOnce = {
      ...piece,
      rows: [{ ...onset!, do: [...onset!.do, ...piece.rows[2]!.do] }, ...piece.rows.slice(3)],
    };
    expect(blocksOf(atOnce, words).map(({ lines }) => inShort(lines)[0])).toEqual([
      "row 0",
      "knit to 32",
      "row 30",
    ]);
  });
});
