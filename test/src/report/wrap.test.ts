import fc from "fast-check";
import { expect, test } from "vitest";
import { wrap } from "../../../src/report/wrap.ts";

test("breaks at spaces, and indents the lines after the first", () => {
  expect(wrap("  Enter   takes the answer", 16, 4)).toEqual(["  Enter   takes", "    the answer"]);
});

test("ends where the indentation is wider than the lines", () => {
  expect(wrap("  a b c", 3, 8)).toEqual(["  a", "        b", "        c"]);
  expect(wrap("one two", 0, 31)).toEqual(["one", `${" ".repeat(31)}two`]);
});

test("keeps every word, at any width and indentation", () => {
  const words = fc.array(fc.constantFrom("a", "row", "carriage", "  ", ""), { maxLength: 12 });
  fc.assert(
    fc.property(words, fc.nat({ max: 20 }), fc.nat({ max: 40 }), (parts, width, indent) => {
      const text = parts.join(" ");
      const lines = wrap(text, width, indent);
      expect(lines.join(" ").split(/ +/).filter(Boolean)).toEqual(text.split(/ +/).filter(Boolean));
    }),
    { seed: 1, numRuns: 300 },
  );
});
