import { expect, test } from "vitest";
import { stepsOf } from "../../../src/sheet/steps.ts";

const knit = (toRow: number) => ({ kind: "knit", rows: 2, toRow, carriage: "right" }) as const;
const work = (row: number) =>
  ({ kind: "do", row, carriage: "right", phrases: ["hang"], running: [] }) as const;

test("plain rows go with what is done after them, and a row at once after another stands alone", () => {
  expect(stepsOf([work(0), knit(2), work(2), work(2), knit(4), work(4)])).toEqual([
    [work(0)],
    [knit(2), work(2)],
    [work(2)],
    [knit(4), work(4)],
  ]);
  expect(stepsOf([])).toEqual([]);
});
