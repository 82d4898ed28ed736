import { describe, expect, test } from "vitest";
import { pageRules } from "../../../../src/sheet/html/page-rules.ts";
import { printArea } from "../../../../src/sheet/paper.ts";
import { tinyDocument, tinyPiece } from "../support/tiny-document.ts";

/** The rules line by line. */
const rulesFor = (title: string, ...pieces: readonly string[]): readonly string[] =>
  pageRules(tinyDocument({ title, pieces: pieces.map((piece) => tinyPiece(piece)) })).split("\n");

/** What the margin boxes of a rule show, and how, by their places. */
const boxesOf = (rule: string): Record<string, string> =>
  Object.fromEntries(
    [...rule.matchAll(/@([a-z]+-[a-z]+) \{ content: ("(?:[^"\\]|\\.)*"[^;]*); ([^}]*) \}/g)].map(
      ([, place, content, style]) => [place!, `${content}; ${style}`],
    ),
  );

/** The string that a margin box begins with, as CSS reads it. */
const nameIn = (box: string): string =>
  /^"((?:[^"\\]|\\.)*)"/
    .exec(box)![1]!
    .replace(/\\([0-9a-f]+) /g, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)));

const font = "font: 14px Sheet, sans-serif; color: #000; white-space: nowrap;";
const pageNumber = `"page " counter(page) " of " counter(pages); ${font}`;

describe("the rules of printed pages", () => {
  test("keep the margins, and leave the paper to whoever prints", () => {
    const rules = rulesFor("Scarf", "scarf");
    expect(rules[0]).toBe("@page { margin: 17mm 12mm; }");
    expect(printArea("a4")).toEqual({ widthMm: 210 - 2 * 12, heightMm: 297 - 2 * 17 });
    expect(printArea("letter")).toEqual({ widthMm: 215.9 - 2 * 12, heightMm: 279.4 - 2 * 17 });
    expect(rules.join("\n")).not.toContain("size:");
  });

  test("are one for what comes before and after and one for each piece, which are told apart by their classes", () => {
    const [, ...rules] = rulesFor("Coat", "back", "front");
    expect(rules.map((rule) => rule.replace(/(@page \w+ \{).*\}$/, "$1 ... }"))).toEqual([
      "@page sheet0 { ... }",
      "@page sheet1 { ... }",
      "@page sheet2 { ... }",
      ".before, .after { page: sheet0; }",
      ".piece-1 { page: sheet1; }",
      ".piece-2 { page: sheet2; }",
    ]);
  });

  test("show name and page above, and the title below the pages that are named after a piece", () => {
    const [, before, back, front] = rulesFor("Coat", "back", "front");
    expect(boxesOf(before!)).toEqual({
      "top-left": `"Coat"; ${font} font-weight: bold;`,
      "top-right": pageNumber,
    });
    expect(boxesOf(back!)).toEqual({
      "top-left": `"back"; ${font} font-weight: bold;`,
      "top-right": pageNumber,
      "bottom-left": `"Coat"; ${font}`,
    });
    expect(boxesOf(front!)["top-left"]).toBe(`"front"; ${font} font-weight: bold;`);
    for (const rule of [before!, back!, front!]) {
      const inner = /^@page \w+ \{ (.*) \}$/.exec(rule)![1]!;
      expect(inner.replaceAll(/@[a-z-]+ \{[^{}]*\}/g, "").trim()).toBe("");
    }
  });

  test("take names as strings, whatever could end a string or the style sheet", () => {
    const name = 'a "b" \\ </style> & c';
    const rules = rulesFor("Coat", name);
    const shown = boxesOf(rules[2]!)["top-left"]!;
    expect(nameIn(shown)).toBe(name);
    expect(rules.join("\n")).not.toMatch(/[<>&]/);
    expect(shown).toContain('"a \\22 b\\22  \\5c  \\3c /style\\3e  \\26  c"');
  });

  // Between the margins of A4 there are 186 mm, which are 703 px; 0.8 of it is 562.4 px, and a letter takes 0.6 * 14 px.
  test("cut a name that would meet the page number", () => {
    const letters = Math.floor(562.4 / (0.6 * 14));
    expect(letters).toBe(66);
    const nameOf = (count: number): string =>
      nameIn(boxesOf(rulesFor("Coat", "x".repeat(count))[2]!)["top-left"]!);
    expect(nameOf(letters)).toBe("x".repeat(letters));
    expect(nameOf(letters + 1)).toBe(`${"x".repeat(letters - 3)}...`);
  });
});
