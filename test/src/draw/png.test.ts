import { readFileSync } from "node:fs";
import { decode } from "fast-png";
import { expect, test, vi } from "vitest";
import { type Picture, svgToPng } from "../../../src/draw/png.ts";
import type { Scene } from "../../../src/draw/scene.ts";
import { chartSvg } from "../../../src/draw/svg.ts";
import { type SampleName, sceneOfSample } from "./support/scenes.ts";

const widthPx = 240;

async function drawn(svg: string, width?: number): Promise<Picture> {
  const picture = await svgToPng(svg, width);
  if ("problem" in picture) throw new Error(picture.problem);
  return picture;
}

const pictureOf = async (scene: Scene): Promise<Uint8Array> =>
  (await drawn(chartSvg(scene, { view: "knitter" }), widthPx)).png;

interface Greys {
  readonly width: number;
  readonly height: number;
  readonly values: readonly number[];
}

function greysOf(png: Uint8Array): Greys {
  const { width, height, data, channels } = decode(png);
  const values = Array.from({ length: width * height }, (_, pixel) => {
    const at = pixel * channels;
    return (data[at]! + data[at + 1]! + data[at + 2]!) / 3;
  });
  return { width, height, values };
}

/**
 * Mean difference of brightness over blocks of 8 by 8 pixels, the largest of them, from 0 to 255: what another
 * version of the renderer shades otherwise at single pixels evens out in a block, a line that is missing does not.
 */
function largestBlockDifference(one: Greys, other: Greys): number {
  const block = 8;
  let largest = 0;
  for (let top = 0; top < one.height; top += block)
    for (let left = 0; left < one.width; left += block) {
      let [sum, pixels] = [0, 0];
      for (let y = top; y < Math.min(top + block, one.height); y++)
        for (let x = left; x < Math.min(left + block, one.width); x++) {
          sum += one.values[y * one.width + x]! - other.values[y * one.width + x]!;
          pixels++;
        }
      largest = Math.max(largest, Math.abs(sum) / pixels);
    }
  return largest;
}

const tolerance = 6;

const stored = (name: SampleName): Greys => greysOf(readFileSync(`test/src/draw/pictures/${name}.png`));

test.each(["sleeve", "front", "cable-sleeve"] as const)(
  "the picture of %s looks like the stored one",
  async (name) => {
    const picture = greysOf(await pictureOf(await sceneOfSample(name)));
    const before = stored(name);
    expect([picture.width, picture.height]).toEqual([before.width, before.height]);
    expect(largestBlockDifference(picture, before)).toBeLessThan(tolerance);
  },
);

test("a picture without its cord, or with another garment's name, would not look like it", async () => {
  const scene = await sceneOfSample("sleeve");
  const before = stored("sleeve");
  for (const changed of [
    { ...scene, strands: [], crossings: [] },
    { ...scene, shaping: [], title: "Sleeve with a crossed cord" },
    { ...scene, title: "Slip with a crossed cord and sleeves" },
  ])
    expect(largestBlockDifference(greysOf(await pictureOf(changed)), before)).toBeGreaterThan(tolerance);
});

test("letters are drawn, with the font that comes with the program", async () => {
  const text = (content: string): string =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="80" height="20" font-family="sans-serif"><rect width="80" height="20" fill="#fff"/><text x="2" y="15" font-size="14">${content}</text></svg>`;
  const [empty, letters] = await Promise.all(["", "L12 R3"].map((content) => drawn(text(content))));
  expect(letters!.notes).toEqual([]);
  const dark = ({ values }: Greys): number => values.filter((value) => value < 128).length;
  expect(dark(greysOf(empty!.png))).toBe(0);
  expect(dark(greysOf(letters!.png))).toBeGreaterThan(60);
});

test("a picture is as large as its document says, where no width is asked for", async () => {
  const svg = chartSvg(await sceneOfSample("sleeve"), { view: "knitter" });
  const { width, height } = decode((await drawn(svg)).png);
  expect(svg).toContain(`width="${width}" height="${height}"`);
});

test("a picture that would be too large comes out smaller, and says so", async () => {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="20000" height="6000"><rect width="9" height="9"/></svg>`;
  const { png, notes } = await drawn(svg);
  const { width, height } = decode(png);
  expect(width / height).toBeCloseTo(20 / 6, 2);
  expect(width * height).toBeLessThan(61_000_000);
  expect(notes).toEqual([expect.stringContaining("made smaller")]);
});

test("a system without the renderer is told so in words", async () => {
  vi.doMock("@resvg/resvg-js", () => {
    throw new Error("no binary for this system");
  });
  expect(await svgToPng("<svg/>")).toEqual({ problem: expect.stringContaining("--output chart.svg") });
  vi.doUnmock("@resvg/resvg-js");
});
