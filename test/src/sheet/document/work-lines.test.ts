import { expect, test } from "vitest";
import { workLines } from "../../../../src/sheet/document/work-lines.ts";
import type { SheetRow } from "../../../../src/sheet/sheet.ts";

const row = (number: number, ...done: SheetRow["do"]): SheetRow => ({
  row: number,
  carriage: number % 2 === 0 ? "right" : "left",
  needles: [-4, 4],
  do: done,
});

const words = {
  columns: (motif: string): number => (motif === "plait" ? 2 : 1),
  running: ({ row: number }: SheetRow): readonly string[] =>
    number === 7 ? ["repeat 1 of 2, row 3 of 4"] : [],
};

const increase = { act: "increase", side: "left", needles: 1 } as const;
const hang = {
  act: "hang",
  strand: "left",
  count: 3,
  needle: -2,
  motif: "plait",
  placement: 1,
  column: 2,
} as const;

test("what is done stands behind the plain rows before it, which are folded into one line", () => {
  expect(workLines([row(4, increase), row(7, hang), row(8, increase)], 0, words)).toEqual([
    { kind: "knit", rows: 4, toRow: 4, carriage: "right" },
    { kind: "do", row: 4, carriage: "right", phrases: ["increase 1 stitch at the left"], running: [] },
    { kind: "knit", rows: 3, toRow: 7, carriage: "left" },
    {
      kind: "do",
      row: 7,
      carriage: "left",
      phrases: ["column 2, left: count 3, hang both legs on L2"],
      running: ["repeat 1 of 2, row 3 of 4"],
    },
    { kind: "knit", rows: 1, toRow: 8, carriage: "right" },
    { kind: "do", row: 8, carriage: "right", phrases: ["increase 1 stitch at the left"], running: [] },
  ]);
});

test("where nothing is knitted before, nothing is said of it", () => {
  const kinds = (rows: readonly SheetRow[], from: number): readonly string[] =>
    workLines(rows, from, words).map(({ kind }) => kind);
  expect(kinds([row(0, increase), row(0, hang)], 0)).toEqual(["do", "do"]);
  expect(kinds([row(20, increase)], 20)).toEqual(["do"]);
  expect(workLines([row(21, increase)], 20, words)[0]).toEqual({
    kind: "knit",
    rows: 1,
    toRow: 21,
    carriage: "left",
  });
});
