import { expect, test } from "vitest";
import { withPrintableText } from "../../../../src/sheet/document/printable-text.ts";

test("every text of plain data is made printable, however deep it lies, and all else stays", () => {
  const data = {
    title: "a\u001b[2Jb",
    rows: [
      ["c\u202ed", "e"],
      [3, true],
    ],
    nothing: null,
    missing: undefined,
    inner: { deeper: [{ text: "ö\u0007" }] },
  };
  expect(withPrintableText(data)).toEqual({
    title: "a\\u001b[2Jb",
    rows: [
      ["c\\u202ed", "e"],
      [3, true],
    ],
    nothing: null,
    missing: undefined,
    inner: { deeper: [{ text: "ö\\u0007" }] },
  });
  expect(withPrintableText(null)).toBe(null);
  expect(withPrintableText(4)).toBe(4);
});
