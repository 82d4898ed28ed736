import { describe, expect, test } from "vitest";
import { keepsLoop, loopMm } from "../../../src/fit/loop.ts";
import { stitch } from "./support/plain-parts.ts";

test("round a loop it is as far as its cord and the straight way back over the cloth", () => {
  // 5 needles of 3 mm and 5 rows of 4 mm are hypot(15, 20) = 25 mm of cloth; 7 cord stitches of 6 mm are 42 mm.
  expect(loopMm({ needles: 5, rows: 5, pickup: 7 }, stitch, 6)).toBeCloseTo(67, 9);
  // Straight up, and straight across.
  expect(loopMm({ needles: 0, rows: 2, pickup: 1 }, stitch, 6)).toBeCloseTo(14, 9);
  expect(loopMm({ needles: 2, rows: 0, pickup: 1 }, stitch, 6)).toBeCloseTo(12, 9);
});

describe("a loop keeps its limit", () => {
  test.each([
    [74.9, true],
    [75, true],
    // What rounding in the sums may add, and what no rounding explains.
    [75 + 1e-7, true],
    [75 + 1e-6, true],
    [75 + 1e-5, false],
    [76, false],
  ])("of 75 mm with %s mm: %s", (loop, keeps) => expect(keepsLoop(loop, 75)).toBe(keeps));

  test("whatever it is where there is none", () => expect(keepsLoop(1e6, undefined)).toBe(true));
});
