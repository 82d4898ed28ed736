import { readFileSync } from "node:fs";
import { decode } from "fast-png";
import { expect, test } from "vitest";
import { svgToPng } from "../../../src/draw/png.ts";
import type { Scene } from "../../../src/draw/scene.ts";
import { chartSvg } from "../../../src/draw/svg.ts";
import { type SampleName, sceneOfSample } from "./support/scenes.ts";

const widthPx = 240;

const pictureOf = async (scene: Scene): Promise<Uint8Array> =>
  (await svgToPng(chartSvg(scene, { view: "knitter" }), widthPx)).png;

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
  const [empty, letters] = await Promise.all(["", "L12 R3"].map((content) => svgToPng(text(content))));
  expect(letters!.note).toBeUndefined();
  const dark = ({ values }: Greys): number => values.filter((value) => value < 128).length;
  expect(dark(greysOf(empty!.png))).toBe(0);
  expect(dark(greysOf(letters!.png))).toBeGreaterThan(60);
});

test("a picture is as large as its document says, where no width is asked for", async () => {
  const svg = chartSvg(await sceneOfSample("sleeve"), { view: "knitter" });
  const { width, height } = decode((await svgToPng(svg)).png);
  expect(svg).toContain(`width="${width}" height="${height}"`);
});
