import { describe, expect, test } from "vitest";
import type { Content } from "../../../../src/sheet/document/document.ts";
import { contentText } from "../../../../src/sheet/text/content-text.ts";

test("a paragraph is an item whose lines are indented below its first", () => {
  const text = "Wash and rest the pieces as you did the swatch.";
  expect(contentText({ kind: "paragraph", text }, 80)).toEqual([`- ${text}`]);
  expect(contentText({ kind: "paragraph", text }, 25)).toEqual([
    "- Wash and rest the",
    "  pieces as you did the",
    "  swatch.",
  ]);
});

test("each fact is an item under its name", () => {
  const facts: Content = {
    kind: "facts",
    facts: [
      { name: "Needles", value: "20, L10 to R10" },
      { name: "Rows", value: "10" },
    ],
  };
  expect(contentText(facts, 80)).toEqual(["- Needles: 20, L10 to R10", "- Rows: 10"]);
  expect(contentText(facts, 18)).toEqual(["- Needles: 20, L10", "  to R10", "- Rows: 10"]);
});

describe("a table", () => {
  const table: Content = {
    kind: "table",
    caption: "Needles in work",
    head: ["Piece", "At the start", "Rows"],
    rows: [
      ["front", "100, L50 to R50", "9"],
      ["a longer name", "2", "112"],
    ],
  };

  test("stands in columns three spaces apart, each as wide as its widest cell, where there is room", () => {
    const lines = [
      "- Needles in work",
      "  Piece           At the start      Rows",
      "  front           100, L50 to R50   9",
      "  a longer name   2                 112",
    ];
    expect(contentText(table, 80)).toEqual(lines);
    // The longest line just fits.
    expect(contentText(table, 40)).toEqual(lines);
  });

  test("is told row by row, each cell with its name, where there is not", () => {
    expect(contentText(table, 39)).toEqual([
      "- Needles in work",
      "  front: at the start 100, L50 to R50;",
      "    rows 9",
      "  a longer name: at the start 2; rows",
      "    112",
    ]);
  });

  test("breaks its caption where that is too long for a line, in either form", () => {
    const caption = "Finished measurements, as counted";
    expect(contentText({ ...table, caption }, 40)).toHaveLength(4);
    expect(contentText({ ...table, caption, head: ["A", "B", "C"], rows: [["1", "2", "3"]] }, 30)).toEqual([
      "- Finished measurements, as",
      "  counted",
      "  A   B   C",
      "  1   2   3",
    ]);
    expect(contentText({ ...table, caption: `${caption} from it` }, 39).slice(0, 2)).toEqual([
      "- Finished measurements, as counted",
      "  from it",
    ]);
  });

  test("counts wide characters as the two columns they take", () => {
    const wide: Content = {
      kind: "table",
      caption: "c",
      head: ["Piece", "Rows"],
      rows: [
        ["編み", "1"],
        ["b", "2"],
      ],
    };
    expect(contentText(wide, 80).slice(1)).toEqual(["  Piece   Rows", "  編み    1", "  b       2"]);
    const wider = { ...wide, head: ["P", "R"] };
    expect(contentText(wider, 80).slice(1)).toEqual(["  P      R", "  編み   1", "  b      2"]);
    // Ten columns and no fewer: two spaces, four for the name, three between and one.
    expect(contentText(wider, 10)).toHaveLength(4);
    expect(contentText(wider, 9).slice(2)).toEqual(["  b: r 2"]);
  });
});
