import { expect, test } from "vitest";
import { extraNeedlesForDrawIn } from "../../../src/cloth/draw-in.ts";

test("what crossed stitches draw in is made up for at both sides, to the nearest needle", () => {
  // A magazine's worked example: 46 stitches as wide as 43.5 plain ones, so that 2.5 are lost, 1.25 at each side.
  expect(extraNeedlesForDrawIn(46 - 43.5)).toBe(1);
  expect([0, 0.9, 1, 3, 7].map(extraNeedlesForDrawIn)).toEqual([0, 0, 1, 2, 4]);
});
