import { expect, test } from "vitest";
import type { BodyPart } from "../../../src/garment/garment.ts";
import { partOf } from "../../../src/safety/body-part.ts";

test.each<[string, BodyPart, string]>([
  ["hood", "hood", "name"],
  ["Left Hood", "hood", "name"],
  ["hood-lining", "hood", "name"],
  ["sleeves", "sleeve", "name"],
  ["back panel 2", "back", "name"],
  ["collar", "collar", "name"],
  // A word inside another is not that word.
  ["childhood scarf", "other", "nothing"],
  ["other", "other", "nothing"],
  ["backing", "other", "nothing"],
])("a piece called %s lies at %s by its %s", (name, part, saidBy) => {
  expect(partOf({ name })).toEqual({ part, saidBy });
});

test("what the file says goes before the name", () => {
  expect(partOf({ name: "back", part: "front" })).toEqual({ part: "front", saidBy: "file" });
});
