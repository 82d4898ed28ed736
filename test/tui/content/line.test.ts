import fc from "fast-check";
import { expect, test } from "vitest";
import { cell, cutText, fitLine, line, lineWidth, plainText } from "../../../tui/content/line.ts";

const width = (text: string): number => lineWidth(line(text));

test("a text with letters two columns wide is cut to the columns that there are", () => {
  expect(cutText("叼 does nothing", 3)).toBe("叼~");
  expect(cutText("a叼b", 3)).toBe("a~ ");
  expect(cutText("words", 0)).toBe("");
  expect(plainText(fitLine(line("叼叼"), 3))).toBe("叼~");
});

test("whatever is cut or filled is as wide as it is to be", () => {
  const text = fc.array(fc.constantFrom("a", " ", "叼", "🧶", "é", "e\u0301"), { maxLength: 12 });
  fc.assert(
    fc.property(text, fc.nat({ max: 14 }), (letters, columns) => {
      const whole = letters.join("");
      expect(width(cell(whole, columns))).toBe(columns);
      expect(lineWidth(fitLine(line(whole), columns))).toBe(columns);
    }),
    { seed: 1, numRuns: 500 },
  );
});
