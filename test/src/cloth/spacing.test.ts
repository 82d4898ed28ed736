import { expect, test } from "vitest";
import { stepsDone } from "../../../src/cloth/spacing.ts";

test("steps are spread with half a gap before the first and after the last", () => {
  const done = (rows: number, steps: number) =>
    Array.from({ length: rows + 1 }, (_, row) => stepsDone(rows, steps, row));
  // Two steps over eight rows: where a quarter and three quarters of the line are passed.
  expect(done(8, 2)).toEqual([0, 0, 1, 1, 1, 1, 2, 2, 2]);
  expect(done(3, 6)).toEqual([0, 2, 4, 6]);
  expect(done(4, 0)).toEqual([0, 0, 0, 0, 0]);
  // Over no row at all everything is done at once.
  expect(stepsDone(0, 5, 0)).toBe(5);
});
