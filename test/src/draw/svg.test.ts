import { readFileSync } from "node:fs";
import { XMLParser, XMLValidator } from "fast-xml-parser";
import { describe, expect, test } from "vitest";
import { type Scene, sceneOf } from "../../../src/draw/scene.ts";
import { type ChartOptions, chartSvg, chartsSvg } from "../../../src/draw/svg.ts";
import { chartText } from "../../../src/draw/text.ts";
import type { View } from "../../../src/draw/view.ts";
import { fitOfPlain, fitOfText, sampleNames, sampleText, sceneOfSample, withCord } from "./support/scenes.ts";

interface Node {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Node[];
  readonly text: string;
}

type Parsed = Readonly<Record<string, unknown>>;

const parser = new XMLParser({ preserveOrder: true, ignoreAttributes: false, attributeNamePrefix: "" });

/** Every element of a document in document order; a document that is not well formed throws. */
function elementsOf(svg: string): readonly Node[] {
  const verdict = XMLValidator.validate(svg);
  if (verdict !== true) throw new Error(verdict.err.msg);
  const flat = (node: Node): readonly Node[] => [node, ...node.children.flatMap(flat)];
  return (parser.parse(svg) as readonly Parsed[])
    .filter((one) => !("?xml" in one))
    .flatMap((one) => flat(nodeOf(one)));
}

function nodeOf(parsed: Parsed): Node {
  const name = Object.keys(parsed).find((key) => key !== ":@")!;
  const content = parsed[name];
  const parts = Array.isArray(content) ? (content as readonly Parsed[]) : [];
  return {
    name,
    attributes: (parsed[":@"] ?? {}) as Record<string, string>,
    children: parts.filter((part) => !("#text" in part)).map(nodeOf),
    text: parts.map((part) => ("#text" in part ? String(part["#text"]) : "")).join(""),
  };
}

const ofClass = (nodes: readonly Node[], name: string): readonly Node[] =>
  nodes.filter(({ attributes }) => attributes.class === name);

const pointsOf = ({ attributes }: Node): readonly (readonly [number, number])[] =>
  attributes.points!.split(" ").map((pair) => pair.split(",").map(Number) as [number, number]);

/** From pixels back to millimetres, by the outline's own corners. */
function backToCloth(scene: Scene, nodes: readonly Node[], sign: number) {
  const outline = pointsOf(ofClass(nodes, "outline")[0]!);
  const last = scene.outline.length - 1;
  const [x0, y0] = outline[0]!;
  const scaleX = (outline[last]![0] - x0) / (sign * (scene.outline[last]!.xMm - scene.outline[0]!.xMm));
  const highest = scene.outline.findIndex(({ yMm }) => yMm > 0.9 * scene.rows * scene.stitch.heightMm);
  const scaleY = (y0 - outline[highest]![1]) / scene.outline[highest]!.yMm;
  return {
    scaleX,
    scaleY,
    toMm: ([x, y]: readonly [number, number]) => ({
      xMm: sign * ((x - x0) / scaleX + sign * scene.outline[0]!.xMm),
      yMm: (y0 - y) / scaleY,
    }),
  };
}

/** A laid cord beside a transferred cable. */
const cordAndCable = {
  format: "evenrow/1",
  title: "A panel of two kinds",
  bed: { needles: 150 },
  gauge: {
    ground: { stitches: 22, rows: 31, over: "10 cm" },
    cord: { needles: 3, stitches: 19, over: "10 cm" },
  },
  pieces: {
    panel: {
      outline: [
        { height: "0 cm", width: "40 cm" },
        { height: "30 cm", width: "40 cm" },
      ],
    },
  },
  motifs: { rope: { like: "transferred cable", cross: [2, 2] }, plait: { like: "crossed cord" } },
  place: [
    { motif: "rope", on: "panel", margins: { left: "5..30", right: "45..80" } },
    { motif: "plait", on: "panel", margins: { left: "45..80", right: "5..30" } },
  ],
};

const views: readonly View[] = ["knitter", "worn"];
const everyChart = sampleNames.flatMap((name) => views.map((view) => ({ name, view })));

describe.each(everyChart)("the chart of $name, view $view", async ({ name, view }) => {
  const scene = await sceneOfSample(name);
  const nodes = elementsOf(chartSvg(scene, { view }));
  const sign = view === "worn" && name === "cable-sleeve" ? -1 : 1;
  const cloth = backToCloth(scene, nodes, sign);

  test("has cells in the gauge's proportion", () => {
    expect(cloth.scaleX / cloth.scaleY).toBeCloseTo(1, 2);
  });

  test("has its strands exactly where the scene has them", () => {
    const strands = ofClass(nodes, "strand");
    expect(strands.map(({ attributes }) => attributes["data-strand"])).toEqual(
      scene.strands.map((strand) => `${strand.placement}/${strand.column}/${strand.name}`),
    );
    strands.forEach((strand, index) => {
      const points = pointsOf(strand).map(cloth.toMm);
      expect(points).toHaveLength(scene.strands[index]!.hangings.length);
      points.forEach(({ xMm, yMm }, at) => {
        // Points are written to a hundredth of a pixel, and a pixel is at least a quarter of a millimetre.
        expect(xMm).toBeCloseTo(scene.strands[index]!.hangings[at]!.xMm, 1);
        expect(yMm).toBeCloseTo(scene.strands[index]!.hangings[at]!.yMm, 1);
      });
    });
  });

  test("draws each crossing's upper strand again over both, at the place of the crossing", () => {
    const over = ofClass(nodes, "over");
    expect(over).toHaveLength(scene.crossings.length);
    const lastStrand = Math.max(...ofClass(nodes, "strand").map((node) => nodes.indexOf(node)), -1);
    const nameOf = (index: number): string => {
      const { placement, column, name: strand } = scene.strands[index]!;
      return `${placement}/${column}/${strand}`;
    };
    over.forEach((node, index) => {
      const crossing = scene.crossings[index]!;
      expect(node.attributes["data-over"]).toBe(nameOf(crossing.over));
      expect(node.attributes["data-under"]).toBe(nameOf(crossing.under));
      expect(nodes.indexOf(node)).toBeGreaterThan(lastStrand);
      const { x1, x2, y1, y2 } = node.attributes;
      const middle = cloth.toMm([(Number(x1) + Number(x2)) / 2, (Number(y1) + Number(y2)) / 2]);
      expect(Math.hypot(middle.xMm - crossing.xMm, middle.yMm - crossing.yMm)).toBeLessThan(
        scene.stitch.widthMm,
      );
    });
  });

  test("numbers every row at which something is done, every mark and every tenth, at both sides", () => {
    const wanted = new Set([...scene.workedRows, ...scene.marks.map(({ row }) => row)]);
    for (let row = 0; row <= scene.rows; row += 10) wanted.add(row);
    for (const side of ["rows-left", "rows-right"]) {
      const column = ofClass(nodes, side)[0]!;
      const numbers = ofClass(column.children, "row-number").map(({ text }) => Number(text));
      expect(new Set(numbers)).toEqual(wanted);
    }
  });

  test("has the carriage beside each numbered row once, on its own side", () => {
    const restsLeft = scene.carriage[0] === "left";
    const columns = { left: ofClass(nodes, "rows-left")[0]!, right: ofClass(nodes, "rows-right")[0]! };
    const numbered = ofClass(columns.left.children, "row-number").map(({ text }) => Number(text));
    const atLeft = numbered.filter((row) => (row % 2 === 0) === restsLeft);
    const [onLeft, onRight] = sign === 1 ? [columns.left, columns.right] : [columns.right, columns.left];
    expect(ofClass(onLeft.children, "carriage")).toHaveLength(atLeft.length);
    expect(ofClass(onRight.children, "carriage")).toHaveLength(numbered.length - atLeft.length);
  });

  test("writes every count of the hangings, and marks every shaping at its row", () => {
    const counts = scene.strands
      .flatMap(({ hangings }) => hangings.map(({ count }) => count))
      .filter((count) => count > 0);
    expect(ofClass(nodes, "count").map(({ text }) => Number(text))).toEqual(counts);
    expect(ofClass(nodes, "hanging")).toHaveLength(scene.strands.flatMap(({ hangings }) => hangings).length);
    for (const kind of ["increase", "decrease", "cast-on", "bind-off"] as const)
      expect(ofClass(nodes, kind).map(({ attributes }) => Number(attributes["data-row"]))).toEqual(
        scene.shaping.filter((event) => event.kind === kind).map(({ row }) => row),
      );
  });

  test("names its marks, its piece, its garment, its gauge and its side", () => {
    const marks = ofClass(nodes, "mark-name").map(({ text }) => text);
    expect(new Set(marks.flatMap((text) => text.split(", ")))).toEqual(
      new Set(scene.marks.map((mark) => mark.name)),
    );
    expect(ofClass(nodes, "title")[0]!.text).toBe(`${scene.title}: ${scene.piece}`);
    expect(ofClass(nodes, "gauge")[0]!.text).toContain(
      `${scene.gauge.ground.stitches} stitches and ${scene.gauge.ground.rows} rows over 10 cm`,
    );
    expect(ofClass(nodes, "view")[0]!.text).toMatch(
      view === "knitter" ? /^as the knitter sees it/ : /^as worn/,
    );
  });
});

describe("as worn", () => {
  const namesOf = (nodes: readonly Node[]): readonly string[] => {
    const names = ofClass(nodes, "needle-name").map(({ text, attributes }) => ({
      text,
      x: Number(/translate\(([\d.]+)/.exec(attributes.transform!)![1]),
    }));
    return [...new Set(names.sort((one, other) => one.x - other.x).map(({ text }) => text))];
  };

  test("a cord's needles run from left to right as the knitter sees them", async () => {
    const scene = await sceneOfSample("front");
    const [seen, worn] = views.map((view) => namesOf(elementsOf(chartSvg(scene, { view }))));
    expect(seen).toEqual(worn);
    expect([seen![0], seen!.at(-1)]).toEqual(["L64", "R64"]);
  });

  test("a transferred cable's needles run the other way, and the other group lies nearer", async () => {
    const scene = await sceneOfSample("cable-sleeve");
    const [seen, worn] = views.map((view) => elementsOf(chartSvg(scene, { view })));
    expect(namesOf(worn!)).toEqual([...namesOf(seen!)].reverse());
    const nearer = (nodes: readonly Node[]) =>
      new Set(ofClass(nodes, "near-group").map(({ attributes }) => attributes["data-group"]));
    // The built-in cable has its left group in front as worn, so from behind the right one is nearer.
    expect([nearer(seen!), nearer(worn!)]).toEqual([new Set(["right"]), new Set(["left"])]);
    expect(ofClass(seen!, "near-group")).toHaveLength(scene.cables.length);
  });

  test("a piece with a cord and a cable says in both views, drawn and as text, that the cable is seen from its back", async () => {
    const fit = await fitOfPlain(cordAndCable);
    const scene = sceneOf(fit, "panel");
    expect(scene.strands.length > 0 && scene.cables.length > 0).toBe(true);
    for (const view of views) {
      const [label] = ofClass(elementsOf(chartSvg(scene, { view })), "view");
      expect(label!.text).toMatch(/; rope shows on the knit side, this is its back$/);
      expect(chartText(scene, { view, columns: 120, glyphs: "ascii" })).toContain("this is its back");
    }
  });

  test("says where nothing is turned round", async () => {
    const text = (name: "front" | "cable-sleeve") =>
      sceneOfSample(name).then(
        (scene) => ofClass(elementsOf(chartSvg(scene, { view: "worn" })), "view")[0]!.text,
      );
    expect(await text("front")).toBe("as worn: the purl side is worn, so nothing is turned round");
    expect(await text("cable-sleeve")).toBe(
      "as worn: the knit side is worn, so left and right change places",
    );
  });
});

test("the halves above a neck are named where they are wide enough for it, as high as they are", async () => {
  const shape = { chest: "90 cm", "armhole depth": "20 cm", "cross back": "38 cm", length: "58 cm" };
  const raglan = {
    ...withCord({
      ...{ lead: 0, repeat: 4, strands: { one: { start: [1, 0], repeat: [[1, 4]] } } },
    }),
    bed: { needles: 200 },
    pieces: { square: { shape: { like: "raglan front", ...shape } } },
  };
  const fit = await fitOfPlain(raglan);
  const scene = sceneOf(fit, "square");
  const nodes = elementsOf(chartSvg(scene, { view: "knitter" }));
  const halves = ofClass(nodes, "halves")[0]!.children;
  expect(halves.map(({ text }) => text).sort()).toEqual(["first half", "second half"]);
  const outline = pointsOf(ofClass(nodes, "outline")[0]!);
  const [bottom, top] = [Math.max(...outline.map(([, y]) => y)), Math.min(...outline.map(([, y]) => y))];
  const [left, right] = [Math.min(...outline.map(([x]) => x)), Math.max(...outline.map(([x]) => x))];
  const { from, to } = scene.widest;
  for (const { attributes, text } of halves) {
    const row = Math.floor(((bottom - Number(attributes.y)) / (bottom - top)) * scene.rows);
    const x = from + ((Number(attributes.x) - left) / (right - left)) * (to - from);
    const half = scene.cells[row]!.find((span) => span.from <= x && x <= span.to)!;
    // A letter of a usual sans-serif font is half as wide as it is high, or a little more.
    const stitches = ((0.55 * 12 * text.length) / (right - left)) * (to - from);
    expect(half.to - half.from).toBeGreaterThanOrEqual(stitches);
  }
});

describe("text from files", () => {
  test("is escaped, and characters that no XML may hold are replaced", async () => {
    const title = `<script>&"'\u0001 both \ud800 ends`;
    const scene = { ...(await sceneOfSample("sleeve")), title };
    const svg = chartSvg(scene, { view: "knitter" });
    expect(svg).not.toContain("<script>");
    expect(svg).toContain("&lt;script&gt;&amp;");
    const nodes = elementsOf(svg);
    expect(nodes.filter(({ name }) => name === "script")).toEqual([]);
    expect(ofClass(nodes, "title")[0]!.text).toContain("<script>&\"'");
    // biome-ignore lint/suspicious/noControlCharactersInRegex: that they are gone is what is tested.
    expect(svg).not.toMatch(/[\u0000-\u0008\ud800-\udfff]/u);
  });

  test("of a whole garment file reaches the chart unharmed", async () => {
    const text = sampleText("sleeve").replace("title: Sleeve with a crossed cord", `title: 'Cuff <&" top'`);
    const scene = sceneOf(await fitOfText(text), "sleeve");
    const title = ofClass(elementsOf(chartSvg(scene, { view: "knitter" })), "title")[0]!;
    expect(title.text).toBe('Cuff <&" top: sleeve');
  });

  test("has room for the names of two marks at one height", async () => {
    const scene = await sceneOfSample("sleeve");
    const at = { row: 10, yMm: 10 * scene.stitch.heightMm };
    const marks = ["shoulder", "bind-off"].map((name) => ({ name, ...at }));
    const nodes = elementsOf(chartSvg({ ...scene, marks }, { view: "knitter" }));
    const [mark] = ofClass(nodes, "mark-name");
    expect(mark!.text).toBe("shoulder, bind-off");
    // A letter of a usual sans-serif font is half as wide as it is high, or a little more.
    const end = Number(mark!.attributes.x) + 0.55 * 12 * mark!.text.length;
    expect(end).toBeLessThanOrEqual(Number(nodes[0]!.attributes.width));
  });

  test("that is long is cut with dots where it would leave its place", async () => {
    const scene = await sceneOfSample("sleeve");
    const long = { ...scene, marks: [{ name: "m".repeat(200), row: 10, yMm: 10 * scene.stitch.heightMm }] };
    const [mark] = ofClass(elementsOf(chartSvg(long, { view: "knitter" })), "mark-name");
    expect(mark!.text).toMatch(/^m{10,40}\.\.\.$/);
  });
});

describe("a space to fit in", () => {
  const page: ChartOptions = { view: "knitter", space: { widthPx: 720, heightPx: 1040 }, textPx: 10 };

  test.each(sampleNames)("holds the chart of %s, its text as large as elsewhere", async (name) => {
    const scene = await sceneOfSample(name);
    const nodes = elementsOf(chartSvg(scene, page));
    const { width, height } = nodes[0]!.attributes;
    expect(Number(width)).toBeLessThanOrEqual(720);
    expect(Number(height)).toBeLessThanOrEqual(1040);
    const rows = ofClass(ofClass(nodes, "rows-left")[0]!.children, "row-number");
    expect(new Set(rows.map(({ attributes }) => attributes["font-size"]))).toEqual(new Set(["10"]));
    const numbers = rows.map(({ text }) => Number(text));
    const ticks = ofClass(ofClass(nodes, "rows-left")[0]!.children, "row-tick").map(({ attributes }) =>
      Number(attributes["data-row"]),
    );
    expect(new Set([...numbers, ...ticks])).toEqual(new Set([...numbers, ...scene.workedRows]));
    for (const { row } of scene.marks) expect(numbers).toContain(row);
    const legend = ofClass(nodes, "legend")[0]!;
    const said = [legend, ...legend.children.flatMap(({ children }) => children)].some(
      ({ text }) => text === "something is done at this row too",
    );
    expect(said).toBe(ticks.length > 0);
  });

  test.each(sampleNames)("keeps each row number of %s near its row", async (name) => {
    const scene = await sceneOfSample(name);
    const nodes = elementsOf(chartSvg(scene, page));
    const outline = pointsOf(ofClass(nodes, "outline")[0]!).map(([, y]) => y);
    const [bottom, top] = [Math.max(...outline), Math.min(...outline)];
    for (const { text, attributes } of ofClass(ofClass(nodes, "rows-left")[0]!.children, "row-number")) {
      const own = bottom - (Number(text) / scene.rows) * (bottom - top);
      // Text stands on its foot, a third of its size below its middle.
      expect(Math.abs(Number(attributes.y) - 3.5 - own)).toBeLessThanOrEqual(18.1);
    }
  });

  test("keeps row numbers apart from one another", async () => {
    const nodes = elementsOf(chartSvg(await sceneOfSample("front"), page));
    const rows = ofClass(ofClass(nodes, "rows-left")[0]!.children, "row-number");
    const places = rows.map(({ attributes }) => Number(attributes.y));
    const gaps = places.slice(1).map((y, index) => y - places[index]!);
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(9.5 - 0.02);
  });
});

test("several charts share one document without sharing ids", async () => {
  const [sleeve, front] = [await sceneOfSample("sleeve"), await sceneOfSample("front")];
  const nodes = elementsOf(chartsSvg([sleeve, front].map((scene) => views.map((view) => ({ scene, view })))));
  expect(
    ofClass(nodes, "chart").map(({ attributes }) => [attributes["data-piece"], attributes["data-view"]]),
  ).toEqual([
    ["sleeve", "knitter"],
    ["sleeve", "worn"],
    ["front", "knitter"],
    ["front", "worn"],
  ]);
  const ids = nodes.flatMap(({ attributes }) => (attributes.id === undefined ? [] : [attributes.id]));
  expect(ids.length).toBeGreaterThan(4);
  expect(new Set(ids).size).toBe(ids.length);
});

test("charts in documents of their own share no ids where each has a prefix, and need no XML declaration in a page", async () => {
  const scene = await sceneOfSample("sleeve");
  const documents = ["first-", "second-"].map((idPrefix) => chartSvg(scene, { view: "knitter", idPrefix }));
  for (const svg of documents) expect(svg).toMatch(/^<svg /);
  const ids = documents.map((svg) => [...svg.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id));
  expect(ids[0]!.length).toBeGreaterThan(2);
  expect(new Set(ids.flat()).size).toBe(ids.flat().length);
  for (const [index, svg] of documents.entries())
    for (const [, used] of svg.matchAll(/url\(#([^)]+)\)/g)) expect(ids[index]).toContain(used);
  expect(chartSvg(scene, { view: "knitter" })).toMatch(/^<\?xml /);
});

describe("the straight sides of cables", () => {
  const panel = (like: string): object => ({
    ...cordAndCable,
    gauge: { ground: cordAndCable.gauge.ground },
    motifs: { rope: { like } },
    place: [{ motif: "rope", on: "panel" }],
  });
  const sidesOf = async (like: string) => {
    const scene = sceneOf(await fitOfPlain(panel(like)), "panel");
    const lines = ofClass(elementsOf(chartSvg(scene, { view: "knitter" })), "cable-edge");
    return { scene, count: lines.length };
  };

  test("of two cables side by side run up between the crossings of each", async () => {
    const { scene, count } = await sidesOf("mirrored cables");
    const below = scene.cables.filter(({ row }) => row < scene.cables.at(-1)!.row);
    expect(new Set(scene.cables.map(({ from }) => from)).size).toBe(2);
    expect(count).toBe(3 * below.length);
  });

  test("of a plait do not run through the crossings in between", async () => {
    const { scene, count } = await sidesOf("plaited cable");
    // All but the last two crossings go on, each with its outer side and its seam.
    expect(count).toBe(2 * (scene.cables.length - 2));
  });
});

test.each([
  ["standing-loops", "the strand stands off as a loop, as long as its count"],
  ["mirrored-cables", "needle out of work: a ladder"],
  ["band", "edge stitches"],
])("the legend of the sample %s explains what others have not", async (name, words) => {
  const fit = await fitOfText(readFileSync(`samples/motifs/${name}.yaml`, "utf8"));
  const told = (scene: Scene): readonly string[] =>
    elementsOf(chartSvg(scene, { view: "knitter" })).map(({ text }) => text);
  expect(told(sceneOf(fit, fit.placements[0]!.piece))).toContain(words);
  expect(told(await sceneOfSample("sleeve"))).not.toContain(words);
});

test("the line of a side margin leaves room for its words", async () => {
  const nodes = elementsOf(chartSvg(await sceneOfSample("front"), { view: "knitter" }));
  const lines = ofClass(nodes, "side-margin");
  expect(lines).toHaveLength(2);
  for (const { attributes } of lines) {
    const parts = [...attributes.d!.matchAll(/M([\d.]+) [\d.]+H([\d.]+)/g)].map(([, from, to]) => [
      Number(from),
      Number(to),
    ]);
    expect(parts).toHaveLength(2);
    // "47 needles" in letters of 12 pixels.
    expect(parts[1]![0]! - parts[0]![1]!).toBeGreaterThan(50);
  }
});

test("eight strands look unlike one another, also in black and white", async () => {
  const straight = (needle: number): object => ({ start: [needle, 0], "lead-in": [], repeat: [[needle, 4]] });
  const strands = Object.fromEntries(
    [-14, -10, -6, -2, 2, 6, 10, 14].map((at) => [`at ${at}`, straight(at)]),
  );
  const scene = sceneOf(await fitOfPlain(withCord({ lead: 0, repeat: 4, strands })), "square");
  const lines = elementsOf(chartSvg(scene, { view: "knitter" })).filter(
    ({ name, attributes }) => name === "polyline" && attributes.points !== undefined,
  );
  const looks = scene.strands.map((_, index) => {
    const points = lines.filter(({ attributes }) => attributes["data-strand"] !== undefined)[index]!
      .attributes.points;
    return lines
      .filter(({ attributes }) => attributes.points === points)
      .map(({ attributes }) => `${attributes.stroke} ${attributes["stroke-dasharray"] ?? ""}`)
      .join();
  });
  expect(new Set(looks).size).toBe(8);
});

test("counts of columns that touch stand clear of one another and of the hangings", async () => {
  const text = sampleText("scarf").replace("gap: { allow: 2..10, prefer: 4 }", "gap: 0");
  const scene = sceneOf(await fitOfText(text), "scarf");
  const nodes = elementsOf(chartSvg(scene, { view: "knitter" }));
  const dots = ofClass(nodes, "hanging").filter(({ name }) => name === "circle");
  const counts = ofClass(nodes, "count").map(({ attributes }) => {
    const [x, size] = [Number(attributes.x), Number(attributes["font-size"])];
    const anchor = attributes["text-anchor"] ?? "start";
    // Both counts of the scarf are one digit; no digit is wider than 0.6 of its size.
    const left = x - 0.6 * size * (anchor === "start" ? 0 : anchor === "middle" ? 0.5 : 1);
    return {
      left,
      right: left + 0.6 * size,
      bottom: Number(attributes.y),
      top: Number(attributes.y) - 0.7 * size,
    };
  });
  expect(counts.length).toBeGreaterThan(100);
  counts.forEach((one, index) => {
    for (const { attributes } of dots) {
      const inside =
        Number(attributes.cx) > one.left &&
        Number(attributes.cx) < one.right &&
        Number(attributes.cy) > one.top &&
        Number(attributes.cy) < one.bottom;
      expect(inside).toBe(false);
    }
    for (const other of counts.slice(index + 1)) {
      const apart =
        one.right <= other.left ||
        other.right <= one.left ||
        one.bottom <= other.top ||
        other.bottom <= one.top;
      expect(apart).toBe(true);
    }
  });
});
