import { expect, test } from "vitest";
import { carriageAt, otherSide } from "../../../src/cloth/carriage.ts";

test("each pass takes the carriage to the other side", () => {
  expect([otherSide("left"), otherSide("right")]).toEqual(["right", "left"]);
  expect([0, 1, 2, 3].map((row) => carriageAt("right", row))).toEqual(["right", "left", "right", "left"]);
  expect([0, 1].map((row) => carriageAt("left", row))).toEqual(["left", "right"]);
});
