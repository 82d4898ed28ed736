import { mkdtempSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { LARGEST_DRAWING_BYTES } from "../../../src/drawing-file/drawing.ts";
import { drawingsIn, loadDrawings } from "../../../src/drawing-file/load-drawings.ts";
import { readSource } from "../../../src/explore/read-source.ts";
import { drawingsAsked } from "../../../src/garment/drawings-asked.ts";
import { readGarment } from "../../../src/garment/read-garment.ts";
import { garmentText, marked } from "../../support/garment-text.ts";

const folder = mkdtempSync(join(tmpdir(), "evenrow-drawing-"));
const path = (name: string): string => join(folder, name);

const FRONT = "M 100 600 L 50 270 V 240 H 170 Q 225 350 280 240 H 400 V 270 L 350 600 Z";
const inMm = (inner: string): string =>
  `<svg width="500mm" height="700mm" viewBox="0 0 500 700">${inner}</svg>`;
writeFileSync(path("front.svg"), inMm(`<path id="front" d="${FRONT}"/><circle id="dot" r="3"/>`));
writeFileSync(path("two.svg"), inMm(`<path id="left" d="${FRONT}"/><path id="right" d="${FRONT}"/>`));
writeFileSync(path("px.svg"), `<svg><path d="${FRONT}"/></svg>`);
writeFileSync(path("broken.svg"), inMm(`<path id="front" d="M 100 600 V 200 H 300 V 600 L 5"/>`));
writeFileSync(path("words.svg"), "no drawing at all");
writeFileSync(path("utf16.svg"), Buffer.from("\ufeff<svg/>", "utf16le"));
writeFileSync(path("latin.svg"), Buffer.from([0x3c, 0xe9, 0x3e]));
writeFileSync(path("packed.svg"), Buffer.from([0x1f, 0x8b, 8, 0]));
writeFileSync(path("huge.svg"), Buffer.alloc(LARGEST_DRAWING_BYTES + 1, 32));
symlinkSync("/dev/zero", path("endless.svg"));

const box = (size: string, width: number): string =>
  `0\nBLOCK\n2\nFRONT ${size}\n0\nTEXT\n8\n1\n1\nPiece Name: FRONT\n0\nTEXT\n8\n1\n1\nSize: ${size}\n0\nPOLYLINE\n8\n1\n70\n1\n${[
    [0, 0],
    [width, 0],
    [width, 360],
    [0, 360],
  ]
    .map(([x, y]) => `0\nVERTEX\n8\n1\n10\n${x}\n20\n${y}\n`)
    .join("")}0\nSEQEND\n0\nPOINT\n8\n4\n10\n0\n20\n330\n0\nENDBLK\n`;
writeFileSync(
  path("pattern.dxf"),
  `0\nSECTION\n2\nBLOCKS\n${box("M", 300)}${box("L", 330)}0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nTEXT\n8\n1\n1\nUnits: METRIC\n0\nENDSEC\n0\nEOF\n`,
);

/** A garment with one drawn piece, motif from cast-on up; § shows where the mistake is told. */
const drawn = (outline: string, more = ""): string =>
  garmentText({
    pieces: `pieces:\n  sleeve:\n    outline: ${outline}\n${more}`,
    place: "place:\n  - { motif: plait, on: sleeve, from: cast-on }",
  });

async function read(text: string) {
  const drawing = drawingsIn(await loadDrawings(text, path("garment.yaml")));
  return readGarment(text, "garment.yaml", { drawing });
}

describe("an outline from a drawing", () => {
  test("is that of the SVG line, its neck and all, and the neck is a mark", async () => {
    const { garment, diagnostics } = await read(drawn("{ svg: front.svg, id: front }"));
    expect(diagnostics).toEqual([]);
    const piece = garment?.pieces[0];
    expect(piece?.outline[0]).toEqual({ heightMm: 0, widthMm: 250 });
    expect(piece?.outline.at(-1)).toEqual({ heightMm: 360, widthMm: 350 });
    expect(piece?.neck[0]?.heightMm).toBeCloseTo(305, 0);
    expect(piece?.marks.map(({ name }) => name)).toEqual(["cast-on", "neck", "bind-off"]);
  });

  test("is that of the DXF piece in its size, with its notch for a mark", async () => {
    const { garment, diagnostics } = await read(drawn("{ dxf: pattern.dxf, piece: Front, size: l }"));
    expect(diagnostics).toEqual([]);
    expect(garment?.pieces[0]?.outline[0]).toEqual({ heightMm: 0, widthMm: 330 });
    expect(garment?.pieces[0]?.marks).toContainEqual({ name: "notch 1", heightMm: 330 });
  });

  test("is the same at every later reading, and in the screen's", async () => {
    const text = drawn("{ svg: front.svg, id: front }");
    const drawings = structuredClone(await loadDrawings(text, path("garment.yaml")));
    expect(readSource(text, path("garment.yaml"), { drawings }).garment).toEqual((await read(text)).garment);
  });

  test("takes what is said but can be lived with as warnings", async () => {
    for (const [outline, words] of [
      ["{ svg: px.svg }", "taken as px"],
      ["{ svg: broken.svg, id: front }", "used up to there"],
    ] as const) {
      const { garment, diagnostics } = await read(drawn(outline));
      expect(garment).toBeDefined();
      expect(diagnostics.map(({ severity }) => severity)).not.toContain("error");
      expect(diagnostics.some(({ message }) => message.includes(words))).toBe(true);
    }
  });

  test("of a garment from standard input is looked for from the working folder", async () => {
    const [loaded] = await loadDrawings(drawn("{ svg: samples/drawn-front.svg, id: front }"), "-");
    expect(loaded).toMatchObject({ file: "samples/drawn-front.svg", drawing: { remarks: [] } });
  });

  test("is read from files that a garment names, each once; most garments name none", () => {
    expect(drawingsAsked(garmentText(), "x.yaml")).toEqual([]);
    expect(drawingsAsked(drawn("{ svg: a.svg }"), "x.yaml")).toEqual([{ file: "a.svg", kind: "svg" }]);
  });
});

describe("mistakes are told in the garment file", () => {
  test.each([
    ["{ svg: §gone.svg }", "drawing-unreadable", "there is no such file", "a file at"],
    [
      "{ svg: §/etc/hosts }",
      "drawing-unreadable",
      "not a file beside the garment's",
      "a path from the garment's own folder",
    ],
    [
      '{ svg: §"https://example.org/a.svg" }',
      "drawing-unreadable",
      "not a file beside the garment's",
      "front.svg",
    ],
    ["{ svg: §. }", "drawing-unreadable", "it is not a file", undefined],
    ["{ svg: §endless.svg }", "drawing-unreadable", "it is not a file", undefined],
    ["{ svg: §huge.svg }", "drawing-unreadable", "too large", "at most 2 MB"],
    ["{ svg: §words.svg }", "drawing-unreadable", "not well-formed XML", undefined],
    ["{ svg: §utf16.svg }", "drawing-unreadable", "UTF-16", "UTF-8"],
    ["{ svg: §latin.svg }", "drawing-unreadable", "UTF-8", undefined],
    ["{ svg: §packed.svg }", "drawing-unreadable", "compressed", undefined],
    ["{ dxf: §front.svg }", "drawing-unreadable", "not a DXF file", undefined],
    [
      "{ svg: front.svg, id: §frnt }",
      "drawing-unknown-shape",
      'no id "frnt"',
      "front (the nearest known name)",
    ],
    ["{ svg: §two.svg }", "drawing-unknown-shape", "2 lines that could be meant", "id: one of left, right"],
    ["{ dxf: pattern.dxf, piece: §BACK }", "drawing-unknown-shape", 'no piece "BACK"', "piece: one of FRONT"],
    ["{ dxf: pattern.dxf, piece: §FRONT }", "drawing-unknown-shape", "in 2 sizes", "size: one of M, L"],
    [
      "{ dxf: pattern.dxf, piece: FRONT, size: §XS }",
      "drawing-unknown-shape",
      'in no size "XS"',
      "one of M, L",
    ],
    ["{ svg: front.svg, id: §dot }", "drawing-unusable", "a circle has no cast-on edge", undefined],
    ["{ svg: §front.svg, id: front, turn: 180 }", "drawing-not-knittable", "2 parts", "one level edge"],
    ["{ svg: front.svg, id: front, turn: §45 }", "wrong-word", "quarter turns", "90, 180 or 270"],
    ["{ svg: front.svg, id: front, centre: §12 }", "missing-unit", "the centre", "12 cm"],
    ["{ svg: front.svg, §piece: front }", "unknown-key", "there is no key", undefined],
    ["{ §id: front }", "missing-key", "the key svg is missing", "svg: front.svg"],
  ])("%s", async (outline, code, message, expected) => {
    const { text, place } = marked(drawn(outline));
    const { garment, diagnostics } = await read(text);
    expect(garment).toBeUndefined();
    const [first] = diagnostics.filter(({ severity }) => severity === "error");
    expect(first).toMatchObject({ code, message: expect.stringContaining(message) });
    if (code !== "missing-key") expect(first?.place).toEqual(place);
    if (expected !== undefined) expect(first?.expected).toContain(expected);
  });

  test("a neck beside a drawing that has one", async () => {
    const { text, place } = marked(
      drawn("{ svg: front.svg, id: front }", "    §neck: [{ height: 30 cm, width: 5 cm }]\n"),
    );
    const { diagnostics } = await read(text);
    expect(diagnostics).toMatchObject([{ code: "conflicting-keys", place }]);
  });

  test("a garment from which no file can be reached", () => {
    const { diagnostics } = readGarment(drawn("{ svg: front.svg }"), "x.yaml");
    expect(diagnostics).toMatchObject([{ code: "drawing-unreadable" }]);
  });
});
