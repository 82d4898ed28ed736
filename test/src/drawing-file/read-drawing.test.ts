import { describe, expect, test } from "vitest";
import { type Drawing, type DrawingKind, isProblem } from "../../../src/drawing-file/drawing.ts";
import { drawnOutline } from "../../../src/drawing-file/outline/drawn-outline.ts";
import { readDrawing } from "../../../src/drawing-file/read-drawing.ts";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const page = (inner: string): string => `<svg width="900mm" viewBox="0 0 900 900">${inner}</svg>`;
const path = (d: string): string => page(`<path d="M 0 0 ${d}"/>`);
const many = (count: number, part: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => part(index)).join("");

const dxf = (blocks: string): string => `0\nSECTION\n2\nBLOCKS\n${blocks}0\nENDSEC\n0\nEOF\n`;
const block = (name: string, entities: string): string => `0\nBLOCK\n2\n${name}\n${entities}0\nENDBLK\n`;
const hugeArc = "0\nARC\n8\n1\n10\n0\n20\n0\n40\n99999\n50\n0\n51\n359\n";

/** What becomes of the first line of a drawing, in words. */
async function verdict(text: string, kind: DrawingKind): Promise<string> {
  const drawing = await readDrawing(bytes(text), kind);
  if (isProblem(drawing)) return drawing.problem;
  const [shape] = drawing.shapes;
  if (!shape) return "no line";
  if (shape.refusal !== undefined) return shape.refusal;
  const outline = drawnOutline(shape, { stitch: { widthMm: 4.5, heightMm: 3.2 }, turn: 0 });
  return "problem" in outline ? outline.problem : "an outline";
}

describe("drawings made to be slow or to swell are refused with a message", () => {
  test.each<[string, DrawingKind, string, string]>([
    [
      "curves without end",
      "svg",
      path("c 0 9999 9999 9999 9999 0 ".repeat(20_000)),
      "more than 20000 points",
    ],
    [
      "arcs as large as they may be",
      "svg",
      path("a 20000 20000 0 1 1 9 9 ".repeat(9000)),
      "more than 20000 points",
    ],
    [
      "a spiral",
      "svg",
      path(
        `${many(9000, (at) => `L ${450 + (at / 20) * Math.cos(at / 3)} ${450 + (at / 20) * Math.sin(at / 3)} `)} z`,
      ),
      "more than 2000 corners",
    ],
    [
      "noise",
      "svg",
      path(`${many(9000, (at) => `L ${(at * 7919) % 900} ${900 - at / 12} `)} z`),
      "more than 2000 corners",
    ],
    ["signs without numbers", "svg", path(`l ${"-".repeat(100_000)}`), "encloses nothing"],
    ["tags that never end", "svg", `<svg>${"<a".repeat(100_000)}`, "not well-formed XML"],
    [
      "a thousand strokes that lead nowhere",
      "dxf",
      dxf(
        block(
          "A",
          many(
            1000,
            (at) => `0\nLINE\n8\n1\n10\n${(at * 7919) % 997}\n20\n0\n11\n${((at * 7919) % 997) + 1}\n21\n0\n`,
          ),
        ),
      ),
      "encloses nothing",
    ],
    [
      "more strokes than a boundary has",
      "dxf",
      dxf(
        block(
          "A",
          many(5001, () => "0\nLINE\n8\n1\n10\n0\n20\n0\n11\n1\n21\n0\n"),
        ),
      ),
      "more than 5000 strokes",
    ],
  ])("%s", async (_, kind, text, words) => {
    expect(await verdict(text, kind)).toContain(words);
  });

  test("a pattern of huge arcs stops when it has more points than any pattern", async () => {
    const drawing = await readDrawing(bytes(dxf(many(300, (at) => block(`A${at}`, hugeArc)))), "dxf");
    const { shapes } = drawing as Drawing;
    const points = shapes
      .flatMap(({ contours }) => contours)
      .reduce((sum, line) => sum + line.points.length, 0);
    expect(points).toBeLessThan(210_000);
    expect(shapes.at(-1)?.refusal).toContain("more than 200000 points in all");
  });
});

test("a pattern in an older code page is read, its names as they were meant", async () => {
  const text = dxf(block("M\u00dcTZE", hugeArc));
  const drawing = await readDrawing(
    Uint8Array.from(text, (letter) => letter.charCodeAt(0)),
    "dxf",
  );
  expect((drawing as Drawing).shapes[0]?.name).toBe("M\u00dcTZE");
});
