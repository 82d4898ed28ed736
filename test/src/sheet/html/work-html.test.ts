import { describe, expect, test } from "vitest";
import type { Block } from "../../../../src/sheet/document/document.ts";
import { blockMarkup } from "../../../../src/sheet/html/work-html.ts";
import { tinyBlock } from "../support/tiny-document.ts";
import { elementOf, treeOf } from "./support/elements.ts";

const tree = (block: Block, piece = "scarf") => treeOf(elementOf(blockMarkup(block, piece).markup));

const box = (name: string) => ["input", { type: "checkbox", "aria-label": name }];
const head = (name: string) => ["th", { scope: "col" }, name];

describe("a block of rows", () => {
  test("is a table under a heading; plain rows stay with what is done after them, a box for each row", () => {
    expect(
      tree(
        tinyBlock({
          lines: [
            { kind: "do", row: 0, carriage: "right", phrases: ["cast on"], running: [] },
            { kind: "knit", rows: 5, toRow: 13, carriage: "left" },
            {
              kind: "do",
              row: 13,
              carriage: "left",
              phrases: ["increase <1>", "then the cord"],
              running: ["repeat 1 & 2"],
            },
          ],
        }),
      ),
    ).toEqual([
      "section",
      { class: "block" },
      ["h3", "Rows"],
      [
        "table",
        { class: "work" },
        ["thead", ["tr", head("Done"), head("Row"), head("What to do: scarf")]],
        [
          "tbody",
          [
            "tr",
            { class: "do" },
            ["td", { class: "tick" }, box("row 0 done")],
            ["th", { scope: "row" }, ["b", "0"], ["small", "carriage right"]],
            ["td", ["p", "cast on"]],
          ],
        ],
        [
          "tbody",
          [
            "tr",
            { class: "knit" },
            [
              "td",
              { colspan: "3" },
              ["p", "knit 5 rows, to row 13, carriage left"],
              [
                "div",
                { class: "ticks" },
                [
                  "span",
                  box("row 9 knitted"),
                  box("row 10 knitted"),
                  ["small", { "aria-hidden": "true" }, "10"],
                ],
                [
                  "span",
                  box("row 11 knitted"),
                  box("row 12 knitted"),
                  box("row 13 knitted"),
                  ["small", { "aria-hidden": "true" }, "13"],
                ],
              ],
            ],
          ],
          [
            "tr",
            { class: "do" },
            ["td", { class: "tick" }, box("row 13 done")],
            ["th", { scope: "row" }, ["b", "13"], ["small", "carriage left"]],
            [
              "td",
              ["p", "increase <1>"],
              ["p", "then the cord"],
              ["p", { class: "running" }, "repeat 1 & 2"],
            ],
          ],
        ],
      ],
    ]);
  });

  test("has above its rows what to know before them, and its shaping under a head of its own", () => {
    const [, , ...content] = tree(
      tinyBlock({
        part: "first half",
        title: "First half: the left one",
        before: [{ kind: "paragraph", text: "The right half waits." }],
        shaping: ["decrease 1 at the neck edge on row 41", "bind off 4 & more"],
        lines: [],
      }),
      "front <1>",
    );
    expect(content).toEqual([
      ["h3", "First half: the left one"],
      ["p", "The right half waits."],
      ["p", { class: "shaping-head" }, "Shaping, which also stands at its rows:"],
      ["ul", ["li", "decrease 1 at the neck edge on row 41"], ["li", "bind off 4 & more"]],
      [
        "table",
        { class: "work" },
        ["thead", ["tr", head("Done"), head("Row"), head("What to do: front <1>, first half")]],
      ],
    ]);
  });
});
