import { expect, test } from "vitest";
import { partsOf, partsWith, stepAt, stepsOf } from "../../../src/work/steps.ts";
import { pieceOfSample } from "./support/records.ts";

test("a piece without a neck has a step for every row from the cast on to the last, each with its carriage", async () => {
  const piece = await pieceOfSample("sleeve");
  const steps = stepsOf(piece);
  expect(steps.map(({ row }) => row)).toEqual(Array.from({ length: piece.rowsInAll + 1 }, (_, row) => row));
  for (const { row, carriage } of steps) expect(carriage).toBe(row % 2 === 0 ? "right" : "left");
  expect(steps[0]!.phrases).toEqual(["cast on L22 to R22"]);
  expect(steps[1]!.phrases).toEqual([]);
  expect(steps.at(-1)!.phrases.at(-1)).toBe("bind off all stitches, L34 to R34");
  expect(partsOf(piece)).toBe(1);
});

test("what is to do stands at its rows, in the sheet's words and order, and nowhere else", async () => {
  const piece = await pieceOfSample("sleeve");
  const rows = stepsOf(piece).filter(({ phrases }) => phrases.length > 0);
  expect(rows.map(({ row }) => row)).toEqual(piece.rows.map(({ row }) => row));
  expect(stepsOf(piece)[27]!.phrases).toEqual([
    "left: count 3, hang both legs on L3",
    "right: count 3, hang both legs on R3",
  ]);
});

test("above a neck the rows start again from the neck's for the second half", async () => {
  const piece = await pieceOfSample("front");
  const steps = stepsOf(piece);
  const neck = steps.find(({ part }) => part === 2)!;
  expect(neck.phrases[0]).toMatch(/bring the carriage back/);
  expect(partsOf(piece)).toBe(2);
  expect(steps).toHaveLength(piece.rowsInAll + 1 + piece.rowsInAll - neck.row + 1);
  expect(partsWith(piece, neck.row - 1)).toEqual([1]);
  expect(partsWith(piece, neck.row)).toEqual([1, 2]);
  expect(steps[stepAt(piece, neck.row, 2)! - 1]).toMatchObject({ row: piece.rowsInAll, part: 1 });
  expect(stepAt(piece, neck.row - 1, 2)).toBeUndefined();
  const second = steps.slice(stepAt(piece, neck.row, 2));
  second.forEach(({ row, carriage }, index) => {
    expect(row).toBe(neck.row + index);
    if (index > 0) expect(carriage).not.toBe(second[index - 1]!.carriage);
  });
});
