import { expect, test } from "vitest";
import { blockName } from "../../../src/sheet/block-name.ts";

const block = { before: [], shaping: [], lines: [] };

test("a piece of one block goes by its own name, the blocks of one with a neck by theirs as well", () => {
  expect(blockName("sleeve", { ...block, part: "whole" })).toBe("sleeve");
  expect(blockName("front", { ...block, part: "whole", title: "Up to the neck" })).toBe(
    "front, up to the neck",
  );
  expect(blockName("front", { ...block, part: "first half", title: "First half: the right one" })).toBe(
    "front, first half",
  );
  expect(blockName("front", { ...block, part: "second half", title: "Second half: the left one" })).toBe(
    "front, second half",
  );
});
