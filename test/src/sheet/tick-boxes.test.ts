import fc from "fast-check";
import { expect, test } from "vitest";
import { tickGroups } from "../../../src/sheet/tick-boxes.ts";

const line = (rows: number, toRow: number) => ({ kind: "knit", rows, toRow, carriage: "left" }) as const;

test("seven rows to row 22 are two groups, which part at the full ten", () => {
  expect(tickGroups(line(7, 22))).toEqual([
    [16, 17, 18, 19, 20],
    [21, 22],
  ]);
});

test("every row has one box, in order, and every group but the last ends at a full ten", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 0, max: 400 }), (rows, before) => {
      const groups = tickGroups(line(rows, before + rows));
      expect(groups.flat()).toEqual(Array.from({ length: rows }, (_, index) => before + 1 + index));
      expect(groups.slice(0, -1).every((group) => group.at(-1)! % 10 === 0 && group.length <= 10)).toBe(true);
      expect(groups.at(-1)!.length).toBeLessThanOrEqual(10);
    }),
    { seed: 20 },
  );
});
