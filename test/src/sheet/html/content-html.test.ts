import { expect, test } from "vitest";
import type { Content } from "../../../../src/sheet/document/document.ts";
import { contentMarkup } from "../../../../src/sheet/html/content-html.ts";
import { elementOf, treeOf } from "./support/elements.ts";

const tree = (content: Content) => treeOf(elementOf(contentMarkup(content).markup));

test("a paragraph is its text, whatever stands in it", () => {
  expect(tree({ kind: "paragraph", text: 'a <b> & "c"' })).toEqual(["p", 'a <b> & "c"']);
});

test("facts are a list of names, each with its value", () => {
  expect(
    tree({
      kind: "facts",
      facts: [
        { name: "Needles", value: "40, L20 to R20" },
        { name: "Rows <1>", value: "8 & more" },
      ],
    }),
  ).toEqual([
    "dl",
    ["div", ["dt", "Needles"], ["dd", "40, L20 to R20"]],
    ["div", ["dt", "Rows <1>"], ["dd", "8 & more"]],
  ]);
});

test("a table has heads of its columns and rows, and each cell tells its column for a narrow screen", () => {
  expect(
    tree({
      kind: "table",
      caption: "Cord",
      head: ["Strand", "Length", "Balls"],
      rows: [
        ["A <1>", "10 cm", "1"],
        ["B", "20 cm", "2"],
      ],
    }),
  ).toEqual([
    "table",
    { class: "figures" },
    ["caption", "Cord"],
    [
      "thead",
      [
        "tr",
        ["th", { scope: "col" }, "Strand"],
        ["th", { scope: "col" }, "Length"],
        ["th", { scope: "col" }, "Balls"],
      ],
    ],
    [
      "tbody",
      [
        "tr",
        ["th", { scope: "row" }, "A <1>"],
        ["td", { "data-column": "Length" }, "10 cm"],
        ["td", { "data-column": "Balls" }, "1"],
      ],
      [
        "tr",
        ["th", { scope: "row" }, "B"],
        ["td", { "data-column": "Length" }, "20 cm"],
        ["td", { "data-column": "Balls" }, "2"],
      ],
    ],
  ]);
});
