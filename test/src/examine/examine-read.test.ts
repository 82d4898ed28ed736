import { expect, test } from "vitest";
import { examineRead } from "../../../src/examine/examine-read.ts";
import { readGarment } from "../../../src/garment/read-garment.ts";
import { garmentText } from "../../support/garment-text.ts";

const lineOf = (text: string, words: string): number =>
  text.split("\n").findIndex((line) => line.includes(words)) + 1;

test("a piece wider than the bed in one size is told for that size, at the size's own line", () => {
  const wide =
    "{ pieces: { sleeve: { outline: [{ height: 0 cm, width: 20 cm }, { height: 36 cm, width: 90 cm }] } } }";
  const text = garmentText({ sizes: `sizes:\n  S:\n  XL: ${wide}` });
  const found = examineRead(readGarment(text, "a.yaml"));
  expect(found).toMatchObject([
    {
      severity: "error",
      message: expect.stringMatching(/sleeve.*\(in size XL\)$/),
      place: { line: lineOf(text, "XL:") },
    },
  ]);
});

test("a file without sizes is examined as it is, and one that does not read not at all", () => {
  expect(examineRead(readGarment(garmentText(), "a.yaml"))).toEqual([]);
  const wide = garmentText({ bed: "bed: { needles: 40 }" });
  expect(examineRead(readGarment(wide, "a.yaml"))[0]?.message).not.toContain("size");
  expect(examineRead(readGarment("", "a.yaml"))).toEqual([]);
});
