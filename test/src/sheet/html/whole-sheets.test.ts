import { describe, expect, test } from "vitest";
import { sceneOf } from "../../../../src/draw/scene.ts";
import { chartSvg } from "../../../../src/draw/svg.ts";
import { sheetHtml } from "../../../../src/sheet/html/sheet-html.ts";
import { sheetToJson } from "../../../../src/sheet/sheet-json.ts";
import { oddPieces, type Sheeted, sheetOfOddNames, sheetOfSample } from "../support/garments.ts";
import { elementsOf, named, unescaped } from "./support/elements.ts";

const htmlOf = ({ fit, document }: Sheeted, typeface?: { regular: string; bold: string }): string =>
  sheetHtml(document, {
    charts: fit.pieces.map(({ name }, index) =>
      chartSvg(sceneOf(fit, name), { view: "knitter", idPrefix: `piece${index + 1}-` }),
    ),
    ...(typeface && { typeface }),
  });

const cases = [
  ["a sleeve", () => sheetOfSample("sleeve")],
  ["a front in two halves above its neck", () => sheetOfSample("front")],
  ["a cable", () => sheetOfSample("cable-sleeve")],
  ["three pieces with odd names", sheetOfOddNames],
] as const;

describe.each(cases)("%s", (_, make) => {
  test("is one well-formed document in English that needs nothing else", async () => {
    const html = htmlOf(await make(), { regular: "AAEAAA==", bold: "AAEAAA==" });
    const nodes = elementsOf(html);
    expect(nodes[0]).toMatchObject({ name: "html", attributes: { lang: "en" } });
    expect(named(nodes, "script", "link", "img", "iframe", "object", "base")).toEqual([]);
    for (const { attributes } of nodes)
      for (const [key, value] of Object.entries(attributes)) {
        if (key === "xmlns") continue;
        expect(value).not.toMatch(/^\s*(https?:)?\/\//);
        if (/^(src|href|xlink:href)$/.test(key)) expect(value).toMatch(/^#/);
      }
    const sources = [...html.matchAll(/url\(([^)]*)\)/g)].map(([, target]) => target!);
    for (const target of sources) expect(target).toMatch(/^(#|data:font\/ttf;base64,)/);
    expect(html).not.toContain("@import");
  });

  test("has every row of the sheet as a row head, in working order, with its carriage", async () => {
    const sheeted = await make();
    const heads = named(elementsOf(htmlOf(sheeted)), "tr")
      .filter(({ attributes }) => attributes.class === "do")
      .map(({ children }) => children.find(({ name }) => name === "th")!.text);
    const { pieces } = sheetToJson(sheeted.sheet) as {
      pieces: { rows: { row: number; carriage: string }[] }[];
    };
    expect(heads).toEqual(
      pieces.flatMap(({ rows }) => rows.map(({ row, carriage }) => `${row}carriage ${carriage}`)),
    );
  });

  test("has a box to tick for every row that is knitted and for all that is done", async () => {
    const sheeted = await make();
    const boxes = named(elementsOf(htmlOf(sheeted)), "input").map(
      ({ attributes }) => attributes["aria-label"],
    );
    const wanted = sheeted.sheet.pieces.flatMap(({ rows }) =>
      rows.flatMap(({ row }, index) => {
        const before = rows[index - 1]?.row ?? 0;
        const knitted = Array.from({ length: Math.max(0, row - before) }, (_, step) => before + 1 + step);
        return [...knitted.map((one) => `row ${one} knitted`), `row ${row} done`];
      }),
    );
    expect(boxes).toEqual(wanted);
  });

  test("has ids that are each there once, and every one that is pointed to is there", async () => {
    const html = htmlOf(await make());
    const ids = elementsOf(html).flatMap(({ attributes }) => attributes.id ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, id] of html.matchAll(/url\(#([^)]*)\)/g)) expect(ids).toContain(id);
  });

  test("has headings that go down one step at a time, and a chart for each piece", async () => {
    const sheeted = await make();
    const nodes = elementsOf(htmlOf(sheeted));
    const levels = named(nodes, "h1", "h2", "h3").map(({ name }) => Number(name.slice(1)));
    expect(levels[0]).toBe(1);
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    expect(levels.filter((level, index) => level > (levels[index - 1] ?? 0) + 1)).toEqual([]);
    const charts = nodes.filter(({ attributes }) => attributes.class === "chart-page");
    expect(charts.map(({ children }) => named(children, "svg").length)).toEqual(
      sheeted.document.pieces.map(() => 1),
    );
  });
});

test("what stands in the file is text wherever it comes, in elements and in the style sheet", async () => {
  const html = htmlOf(await sheetOfOddNames());
  const nodes = elementsOf(html);
  expect(named(nodes, "b").every(({ text }) => /^\d+$/.test(text))).toBe(true);
  expect(
    named(nodes, "section")
      .filter(({ attributes }) => attributes.class?.startsWith("piece "))
      .map(({ children }) => named(children, "h2")[0]!.text)
      .map(unescaped),
  ).toEqual([...oddPieces]);
  expect(html.match(/<\/style>/g)).toHaveLength(1);
});
