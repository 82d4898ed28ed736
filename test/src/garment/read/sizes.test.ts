import { describe, expect, test } from "vitest";
import { readGarment } from "../../../../src/garment/read-garment.ts";
import { garmentText, marked } from "../../../support/garment-text.ts";
import { expectOnly } from "../../../support/one-mistake.ts";

const shapes = `pieces:
  sleeve:
    shape: { like: set-in sleeve, size: woman M, ease: standard, cuff: 21 cm, armhole depth: 20 cm }
    grow: 1 cm
  scarf:
    outline: [{ height: 0 cm, width: 20 cm }, { height: 30 cm, width: 20 cm }]
    marks: { low: 4 cm, high: 26 cm }`;

const rangeOf = (sizes: string, pieces = shapes) => {
  const text = garmentText({ pieces, sizes });
  const { range, diagnostics, locate } = readGarment(text, "sleeve.yaml");
  expect(diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
  const piece = (size: string, name: string) =>
    range!.sizes.find((one) => one.name === size)!.garment.pieces.find((one) => one.name === name)!;
  return { range: range!, locate, piece, text };
};

describe("sizes", () => {
  test("come in the order of the file, the first one as the garment, each named in its title", () => {
    const text = garmentText({ sizes: "sizes:\n  M:\n  S: {}\n  L: {}" });
    const { garment, range } = readGarment(text, "sleeve.yaml");
    expect(range!.sizes.map(({ name }) => name)).toEqual(["M", "S", "L"]);
    expect(range!.sizes.map(({ garment: { title } }) => title)).toEqual([
      "sleeve, size M",
      "sleeve, size S",
      "sleeve, size L",
    ]);
    expect(range!.title).toBe("sleeve");
    expect(range!.share).toBeUndefined();
    expect(garment).toBe(range!.sizes[0]!.garment);
  });

  test("a file without them has no range", () => {
    expect(readGarment(garmentText(), "sleeve.yaml").range).toBeUndefined();
  });

  test("a size's key of a piece takes the place of the general one, and the others stay", () => {
    const { piece } = rangeOf("sizes:\n  S: { pieces: { scarf: { grow: 5 mm } } }\n  M:");
    expect(piece("S", "scarf")).toMatchObject({ growMm: 5, outline: piece("M", "scarf").outline });
    expect(piece("M", "scarf").growMm).toBe(0);
  });

  test("marks and measurements of a shape are laid over one by one", () => {
    const { piece } = rangeOf(
      "sizes:\n  S: { pieces: { scarf: { marks: { low: 5 cm } }, sleeve: { shape: { cuff: 18 cm } } } }\n  M:",
    );
    expect(piece("S", "scarf").marks).toContainEqual({ name: "low", heightMm: 50 });
    expect(piece("S", "scarf").marks).toContainEqual({ name: "high", heightMm: 260 });
    expect(piece("S", "sleeve").outline[0]).toEqual({ heightMm: 0, widthMm: 180 });
    expect(piece("M", "sleeve").outline[0]).toEqual({ heightMm: 0, widthMm: 210 });
    expect(piece("S", "sleeve").marks).toEqual(piece("M", "sleeve").marks);
  });

  test("a size of the tables goes into every shape, but not over what the size writes itself", () => {
    const { piece } = rangeOf(
      "sizes:\n  L: { size: woman L }\n  own: { size: woman L, pieces: { sleeve: { shape: { size: woman S } } } }\n  M: { size: woman M }\n  none:\n  S: { size: woman S }",
    );
    expect(piece("L", "sleeve").outline).not.toEqual(piece("M", "sleeve").outline);
    expect(piece("own", "sleeve").outline).toEqual(piece("S", "sleeve").outline);
    expect(piece("none", "sleeve").outline).toEqual(piece("M", "sleeve").outline);
    expect(piece("L", "scarf").outline).toEqual(piece("M", "scarf").outline);
  });

  test("an outline of a size puts a general shape aside, and a shape an outline", () => {
    const { piece } = rangeOf(
      "sizes:\n  S: { pieces: { sleeve: { outline: [{ height: 0 cm, width: 10 cm }, { height: 30 cm, width: 10 cm }], marks: { rib top: 4 cm, underarm: 20 cm } }, scarf: { shape: { like: set-in sleeve, size: woman M, ease: standard, cuff: 21 cm, armhole depth: 20 cm } } } }\n  M:",
    );
    expect(piece("S", "sleeve").outline).toEqual([
      { heightMm: 0, widthMm: 100 },
      { heightMm: 300, widthMm: 100 },
    ]);
    expect(piece("S", "scarf").outline).toEqual(piece("M", "sleeve").outline);
  });

  test("pieces may stand under the sizes alone", () => {
    const one = (width: number): string =>
      `{ pieces: { sleeve: { outline: [{ height: 0 cm, width: ${width} cm }, { height: 36 cm, width: 31 cm }], marks: { rib top: 4 cm, underarm: 33 cm } } } }`;
    const { piece } = rangeOf(`sizes:\n  S: ${one(18)}\n  M: ${one(20)}`, "");
    expect(piece("S", "sleeve").outline[0]).toEqual({ heightMm: 0, widthMm: 180 });
    expect(piece("M", "sleeve").path).toEqual(["sizes", "M", "pieces", "sleeve"]);
  });

  test("a wearer of a size takes the place of the general one", () => {
    const text = `${garmentText({ sizes: "sizes:\n  two: { wearer: { age: 2 } }\n  six: {}" })}wearer: { age: 6, height: 116 cm }\n`;
    const { range } = readGarment(text, "sleeve.yaml");
    expect(range!.sizes.map(({ garment: { wearer } }) => wearer)).toMatchObject([
      { ageYears: 2 },
      { ageYears: 6, heightMm: 1160 },
    ]);
    expect(range!.sizes[0]!.garment.wearer).not.toHaveProperty("heightMm");
  });

  test("a value is found where it is written: in its size, else under the pieces", () => {
    const { locate, text } = rangeOf("sizes:\n  S: { pieces: { sleeve: { shrink: 5 mm } } }");
    const lineOf = (words: string): number => text.split("\n").findIndex((line) => line.includes(words)) + 1;
    expect(locate(["sizes", "S", "pieces", "sleeve", "shrink"])?.line).toBe(lineOf("shrink: 5 mm"));
    expect(locate(["sizes", "S", "pieces", "sleeve", "grow"])?.line).toBe(lineOf("grow: 1 cm"));
  });

  test("motifs are read once for all of them", () => {
    const { range } = rangeOf("sizes:\n  S:\n  M:");
    expect(range.sizes[0]!.garment.motifs).toBe(range.sizes[1]!.garment.motifs);
  });
});

describe("a mistake", () => {
  test("that shows in every size is told once and without a size", () => {
    const text = garmentText({ sizes: "sizes:\n  S:\n  M:", place: "place: [{ motif: plait, on: slevee }]" });
    const { diagnostics } = readGarment(text, "sleeve.yaml");
    expect(diagnostics.filter(({ code }) => code === "unknown-piece")).toMatchObject([
      { message: expect.not.stringContaining("in size") },
    ]);
  });

  test("that shows in some sizes names them", () => {
    const short =
      "{ pieces: { sleeve: { outline: [{ height: 0 cm, width: 20 cm }, { height: 30 cm, width: 31 cm }] } } }";
    const text = garmentText({ sizes: `sizes:\n  S: ${short}\n  M:\n  XS: ${short}` });
    const { diagnostics, garment } = readGarment(text, "sleeve.yaml");
    expect(garment).toBeUndefined();
    expect(diagnostics).toMatchObject([
      { code: "mark-outside", message: "the mark underarm lies above the piece (in sizes S and XS)" },
    ]);
  });

  test.each([
    ["sizes: §[S, M]", "wrong-type", "a list of 2", "S: { size: woman S }"],
    ["sizes: §{}", "empty-range", "nothing between the brackets", "woman S"],
    ["sizes:\n  S: { §peices: {} }", "unknown-key", "peices", "pieces"],
    ["sizes:\n  S: §12", "wrong-type", "12", "size: woman S"],
  ] as const)("is told at its place: %s", (sizes, code, found, expected) => {
    expectOnly({ sizes }, code, found, expected);
  });

  test("in a size of the tables is told once, where the size is written", () => {
    const { text, place } = marked(
      garmentText({
        pieces: shapes,
        place: "place: [{ motif: plait, on: sleeve }]",
        sizes: "sizes:\n  S: { size: §womna S }",
      }),
    );
    const { diagnostics } = readGarment(text, "sleeve.yaml");
    expect(diagnostics.filter(({ severity }) => severity === "error")).toMatchObject([
      { code: "unknown-size", place, expected: expect.stringContaining("woman S") },
    ]);
  });
});
