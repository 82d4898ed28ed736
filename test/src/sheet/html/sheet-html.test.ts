import { describe, expect, test } from "vitest";
import { type HtmlParts, sheetHtml } from "../../../../src/sheet/html/sheet-html.ts";
import { tinyDocument, tinyPiece } from "../support/tiny-document.ts";
import { elementsOf, type Node, named, type Tree, treeOf } from "./support/elements.ts";

const odd = `"a" <b> & 'c'`;

const htmlOf = (
  changes: Parameters<typeof tinyDocument>[0] = {},
  parts: HtmlParts = { charts: [] },
): string => sheetHtml(tinyDocument(changes), parts);

const child = (node: Node, name: string): Node => named(node.children, name)[0]!;

const rootOf = (html: string): Node => elementsOf(html)[0]!;

/** A tree down to its parts' own names, classes and headings. */
const inShort = (tree: Tree): Tree =>
  tree.map((part) =>
    Array.isArray(part) && !/^h\d$/.test(String(part[0]))
      ? part.slice(0, 1 + Number(typeof part[1] === "object" && !Array.isArray(part[1])))
      : part,
  ) as unknown as Tree;

describe("the sheet as one document", () => {
  test("says what it is, in which language and how wide it comes out on a phone", () => {
    const html = htmlOf({ title: odd });
    expect(html).toMatch(/^<!DOCTYPE html>\n<html lang="en">.*<\/html>\n$/s);
    const { name, attributes, children } = rootOf(html);
    expect([name, attributes, children.map((one) => one.name)]).toEqual([
      "html",
      { lang: "en" },
      ["head", "body"],
    ]);
    const [charset, viewport, title, ...rest] = children[0]!.children.map(treeOf);
    expect([charset, viewport, title]).toEqual([
      ["meta", { charset: "utf-8" }],
      ["meta", { name: "viewport", content: "width=device-width, initial-scale=1" }],
      ["title", odd],
    ]);
    expect(rest).toHaveLength(1);
  });

  test("has the rules of its pages and of its looks in one style sheet", () => {
    const css = child(
      child(rootOf(htmlOf({}, { charts: [], typeface: { regular: "AAEC", bold: "AwQF" } })), "head"),
      "style",
    ).text;
    expect(css.split("\n")).toEqual(
      expect.arrayContaining(["@page { margin: 17mm 12mm; }", ".piece-1 { page: sheet1; }"]),
    );
    expect(css).toMatch(/\n@font-face \{[^}]*AAEC[^}]*\}\n@font-face \{[^}]*AwQF[^}]*\}\n/);
    expect(css).toMatch(/^\n[\s\S]*\nmain \{[\s\S]*\n$/);
  });

  test("goes from its sections over the pieces to the finish", () => {
    const main = child(
      child(rootOf(htmlOf({ title: odd, pieces: [tinyPiece("back"), tinyPiece("front")] })), "body"),
      "main",
    );
    expect(main.children.map(treeOf).map(inShort)).toEqual([
      ["section", { class: "before" }, ["h1", odd], ["section"]],
      ["section", { class: "piece piece-1" }, ["h2", "back"], ["dl"], ["p"], ["section", { class: "block" }]],
      [
        "section",
        { class: "piece piece-2" },
        ["h2", "front"],
        ["dl"],
        ["p"],
        ["section", { class: "block" }],
      ],
      ["section", { class: "after" }, ["section"]],
    ]);
    const [before, , , after] = main.children;
    expect(treeOf(before!.children[1]!)).toEqual(["section", ["h2", "Check first"], ["p", "Knit a swatch."]]);
    expect(treeOf(after!.children[0]!)).toEqual(["section", ["h2", "Finish"], ["p", "Sew in the ends."]]);
  });

  test("shows each piece's chart after its rows under a heading of its own, and none where there is none", () => {
    const pieces = [tinyPiece("back"), tinyPiece(odd), tinyPiece("collar")];
    const charts = ['<svg id="one"/>', '<svg id="two"><g/></svg>'];
    const sections = elementsOf(htmlOf({ pieces }, { charts })).filter(({ attributes }) =>
      attributes.class?.startsWith("piece "),
    );
    expect(sections.map(({ children }) => treeOf(children.at(-1)!)).slice(0, 2)).toEqual([
      ["section", { class: "chart-page" }, ["h3", "Chart of back"], ["svg", { id: "one" }]],
      ["section", { class: "chart-page" }, ["h3", `Chart of ${odd}`], ["svg", { id: "two" }, ["g"]]],
    ]);
    expect(sections[2]!.children.at(-1)!.attributes.class).toBe("block");
  });

  test("heads each block's table with its own piece", () => {
    const pieces = [tinyPiece("back"), tinyPiece("front")];
    const heads = named(elementsOf(htmlOf({ pieces })), "th").filter(({ text }) =>
      text.startsWith("What to do"),
    );
    expect(heads.map(({ text }) => text)).toEqual(["What to do: back", "What to do: front"]);
  });
});
