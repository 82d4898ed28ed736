import { expect, test } from "vitest";
import { acrossSizes } from "../../../src/diagnostics/across-sizes.ts";
import type { Diagnostic } from "../../../src/diagnostics/diagnostic.ts";

const one: Diagnostic = { severity: "warning", code: "too-short", message: "one", path: ["pieces"] };
const other: Diagnostic = { ...one, message: "other" };

test("what shows in every size is told as it is, once, in the order in which it was found", () => {
  expect(
    acrossSizes([
      { name: "S", diagnostics: [other, one] },
      { name: "M", diagnostics: [one, other] },
    ]),
  ).toEqual([other, one]);
});

test("what shows in some sizes is told once with their names", () => {
  const sizes = [
    { name: "S", diagnostics: [one] },
    { name: "M", diagnostics: [other] },
    { name: "L", diagnostics: [other] },
  ];
  expect(acrossSizes(sizes).map(({ message }) => message)).toEqual([
    "one (in size S)",
    "other (in sizes M and L)",
  ]);
});

test("nothing found is nothing told", () => {
  expect(acrossSizes([{ name: "S", diagnostics: [] }])).toEqual([]);
});
