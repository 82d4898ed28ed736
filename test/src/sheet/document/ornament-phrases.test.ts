import { describe, expect, test } from "vitest";
import {
  inPhrase,
  outPhrase,
  patternPhrase,
  plainPhrase,
} from "../../../../src/sheet/document/ornament-phrases.ts";
import type { PatternAction } from "../../../../src/sheet/sheet.ts";

const whose = { motif: "leaves", placement: 1, column: 1 };

test("a ladder says which needle goes and which neighbour takes its stitch, and later gives it a loop", () => {
  expect(outPhrase({ act: "out", needle: -7, onto: -8, ...whose })).toBe(
    "put the stitch of L7 onto L8 and take L7 out of work: it leaves a ladder",
  );
  expect(inPhrase({ act: "in", needle: 7, from: 8, ...whose })).toBe(
    "bring R7 back to work and lift the loop below the stitch of R8 onto it, so that no hole is left",
  );
});

describe("a pattern", () => {
  const pattern = (changes: Partial<PatternAction> = {}): string =>
    patternPhrase({
      act: "pattern",
      from: -12,
      to: 12,
      repeat: 1,
      repeats: 3,
      rows: 16,
      stitches: 12,
      across: 2,
      edge: { left: 0, right: 0 },
      ...whose,
      ...changes,
    });
  const card = { row: 1, stitch: 13, stitches: 24 };

  test("says at its first repeat what is knitted where", () => {
    expect(pattern()).toBe(
      "leaves, repeat 1 of 3: knit the pattern on L12 to R12, 2 repeats of 12 stitches by 16 rows side by side",
    );
  });

  test("of one repeat across is side by side with nothing", () => {
    expect(pattern({ across: 1, stitches: 24, repeats: 1, rows: 1 })).toBe(
      "leaves, repeat 1 of 1: knit the pattern on L12 to R12, 1 repeat of 24 stitches by 1 row",
    );
    expect(pattern({ across: 24, stitches: 1 })).toContain("24 repeats of 1 stitch by 16 rows side by side");
  });

  test("names its edge stitches at both ends where it has any", () => {
    expect(pattern({ edge: { left: 1, right: 2 } })).toMatch(
      /side by side, 1 edge stitch at the left and 2 at the right$/,
    );
    expect(pattern({ edge: { left: 2, right: 0 } })).toMatch(
      /side by side, 2 edge stitches at the left and 0 at the right$/,
    );
    expect(pattern({ edge: { left: 0, right: 1 } })).toMatch(
      /, 0 edge stitches at the left and 1 at the right$/,
    );
  });

  test("of a card says where to set it", () => {
    expect(pattern({ card, edge: { left: 1, right: 1 } })).toMatch(
      / at the right; set the card at row 1, where stitch 13 of its 24 begins the first repeat$/,
    );
  });

  test("goes back to its first row at each further repeat", () => {
    expect(pattern({ repeat: 2 })).toBe("leaves, repeat 2 of 3: from its first row again");
    expect(pattern({ repeat: 3, card })).toBe("leaves, repeat 3 of 3: row 1 of the card again");
  });

  test("that is left unfinished says how many of its rows are knitted", () => {
    expect(pattern({ repeat: 4, rows: 5, unfinished: true })).toBe(
      "leaves, repeat 4, left unfinished: its first 5 rows",
    );
    expect(pattern({ repeat: 4, rows: 1, unfinished: true, card })).toBe(
      "leaves, repeat 4, left unfinished: its first row, from row 1 of the card",
    );
  });

  test("ends on the needles on which it was knitted", () => {
    expect(plainPhrase({ act: "plain", from: -12, to: 12, ...whose })).toBe(
      "leaves ends: knit plain again on L12 to R12",
    );
  });
});
