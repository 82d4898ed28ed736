import { readFileSync, writeFileSync } from "node:fs";
import { decode } from "fast-png";
import { describe, expect, test, vi } from "vitest";
import { otherSide } from "../../../src/cloth/carriage.ts";
import { type Picture, svgToPng } from "../../../src/draw/png.ts";
import type { Scene } from "../../../src/draw/scene.ts";
import { chartSvg } from "../../../src/draw/svg.ts";
import type { View } from "../../../src/draw/view.ts";
import { type SampleName, sceneOfSample } from "./support/scenes.ts";

/** Small enough to keep, large enough to show each part of a chart. */
const widthPx = 480;

async function drawn(svg: string, width?: number): Promise<Picture> {
  const picture = await svgToPng(svg, width);
  if ("problem" in picture) throw new Error(picture.problem);
  return picture;
}

const pictureOf = async (scene: Scene, view: View = "knitter"): Promise<Uint8Array> =>
  (await drawn(chartSvg(scene, { view }), widthPx)).png;

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

const pathOf = (name: SampleName): string => `test/src/draw/pictures/${name}.png`;
const stored = (name: SampleName): Greys => greysOf(readFileSync(pathOf(name)));

// After a change that is wanted: RENEW_PICTURES=yes npx vitest run test/src/draw/png.test.ts
test.each(["sleeve", "front", "cable-sleeve"] as const)(
  "the picture of %s looks like the stored one",
  async (name) => {
    const png = await pictureOf(await sceneOfSample(name));
    if (process.env.RENEW_PICTURES === "yes") writeFileSync(pathOf(name), png);
    const [picture, before] = [greysOf(png), stored(name)];
    expect([picture.width, picture.height]).toEqual([before.width, before.height]);
    expect(largestBlockDifference(picture, before)).toBeLessThan(tolerance);
  },
);

describe("a picture would not look like the stored one", () => {
  const without: readonly (readonly [string, SampleName, (scene: Scene) => Partial<Scene>])[] = [
    ["without its cord", "sleeve", () => ({ strands: [], crossings: [] })],
    ["without one strand", "sleeve", ({ strands }) => ({ strands: strands.slice(0, 1), crossings: [] })],
    [
      "with its strands crossing the other way",
      "front",
      ({ crossings }) => ({ crossings: turned(crossings) }),
    ],
    ["with one hanging elsewhere", "front", ({ strands }) => ({ strands: moved(strands) })],
    ["without its shaping", "sleeve", () => ({ shaping: [] })],
    ["without its marks", "sleeve", () => ({ marks: [] })],
    ["without its margins", "front", () => ({ fields: [] })],
    [
      "with the carriage at the other side",
      "sleeve",
      ({ carriage }) => ({ carriage: carriage.map(otherSide) }),
    ],
    ["with another garment's name", "sleeve", () => ({ title: "Slip with a crossed cord and sleeves" })],
    ["without its cable", "cable-sleeve", () => ({ cables: [] })],
  ];

  const turned = (crossings: Scene["crossings"]): Scene["crossings"] =>
    crossings.map((crossing) => ({
      ...crossing,
      over: crossing.under,
      under: crossing.over,
      overFrom: crossing.underFrom,
      underFrom: crossing.overFrom,
    }));

  const moved = ([first, ...others]: Scene["strands"]): Scene["strands"] => [
    {
      ...first!,
      hangings: first!.hangings.map((one, index) => (index === 5 ? { ...one, xMm: one.xMm + 20 } : one)),
    },
    ...others,
  ];

  test.each(without)("%s (%s)", async (_, name, change) => {
    const scene = await sceneOfSample(name);
    const picture = greysOf(await pictureOf({ ...scene, ...change(scene) }));
    expect(differs(picture, stored(name))).toBe(true);
  });

  test("turned round", async () => {
    const picture = greysOf(await pictureOf(await sceneOfSample("cable-sleeve"), "worn"));
    expect(differs(picture, stored("cable-sleeve"))).toBe(true);
  });

  const differs = (one: Greys, other: Greys): boolean =>
    one.height !== other.height || largestBlockDifference(one, other) >= tolerance;
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
