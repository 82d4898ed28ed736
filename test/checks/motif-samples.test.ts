import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { type Scene, sceneOf } from "../../src/draw/scene.ts";
import { chartSvg } from "../../src/draw/svg.ts";
import { chartText } from "../../src/draw/text.ts";
import type { Fit } from "../../src/fit/fit.ts";
import { BUILT_IN_MOTIFS } from "../../src/motif/builtin/index.ts";
import { buildSheet } from "../../src/sheet/build-sheet.ts";
import type { CordEntry, GarmentFile } from "../support/garment-file.ts";
import { fitHere, soundGarment } from "../support/run-garment.ts";

const names = readdirSync("samples/motifs")
  .filter((file) => file.endsWith(".yaml"))
  .map((file) => file.replace(".yaml", ""));

const textOf = (name: string): string => readFileSync(`samples/motifs/${name}.yaml`, "utf8");

async function fitOf(text: string): Promise<Fit> {
  const result = await fitHere(soundGarment(text));
  if (result.status !== "fits") throw new Error(`nothing fits: ${result.status}`);
  return result.fit;
}

const sceneOfSample = async (name: string): Promise<Scene> => sceneOf(await fitOf(textOf(name)), "panel");

describe.each(names)("the sample %s", (name) => {
  test("has its drawing in the README", async () => {
    const readme = readFileSync("README.md", "utf8");
    expect(readme).toContain(`(samples/motifs/${name}.yaml)`);
    expect(readme).toContain(`(samples/pictures/motifs/${name}.svg)`);
    await expect(chartSvg(await sceneOfSample(name), { view: "knitter" })).toMatchFileSnapshot(
      `../../samples/pictures/motifs/${name}.svg`,
    );
  });

  test("writes out the built-in motif of its name", () => {
    const { motifs } = parse(textOf(name)) as GarmentFile;
    const [[called, motif]] = Object.entries(motifs) as [[string, GarmentFile["motifs"][string]]];
    const builtIn = BUILT_IN_MOTIFS.get(called);
    if (builtIn === undefined) expect(["four cables", "leaves"]).toContain(called);
    else expect(motif).toEqual(builtIn);
  });
});

test("every built-in motif is named in the README", () => {
  const readme = readFileSync("README.md", "utf8");
  for (const name of BUILT_IN_MOTIFS.keys()) expect(readme).toContain(`\`${name}\``);
});

/** For each crossing from the bottom up, the strand over and the strand under. */
const crossingsOf = ({ crossings, strands }: Scene): [string, string][] =>
  crossings.map(({ over, under }) => [strands[over]!.name, strands[under]!.name]);

describe("over and under", () => {
  test("touching lozenges never cross, crossed ones take turns", async () => {
    expect(crossingsOf(await sceneOfSample("lozenge"))).toEqual([]);
    const overs = crossingsOf(await sceneOfSample("crossed-lozenge")).map(([over]) => over);
    expect(overs.length).toBeGreaterThan(3);
    overs.forEach((over, index) => {
      expect(over).toBe(index % 2 === 0 ? "right" : "left");
    });
  });

  test("in a braid the one from outside lies over, from the left and from the right in turn", async () => {
    const { crossings, strands } = await sceneOfSample("braid");
    expect(crossings.length).toBeGreaterThan(6);
    crossings.forEach(({ over, overFrom }, index) => {
      const { needle } = strands[over]!.hangings[overFrom]!;
      expect(Math.abs(needle)).toBeGreaterThan(1);
      expect(Math.sign(needle)).toBe(index % 2 === 0 ? -1 : 1);
    });
  });

  test.each([2, 3, 4, 5, 9])(
    "in a lattice of %i every cord goes over one and under the next",
    async (cords) => {
      const wide = textOf("lattice")
        .replace("cords: { unit: strands, allow: 4 }", `cords: { unit: strands, allow: ${cords} }`)
        .replaceAll("width: 18 cm", "width: 30 cm")
        .replace("20 cm,", "60 cm,");
      const all = crossingsOf(sceneOf(await fitOf(wide), "panel"));
      for (let cord = 1; cord <= cords; cord++) {
        const passed = all
          .filter((pair) => pair.includes(`cord ${cord}`))
          .map(([over]) => over === `cord ${cord}`);
        expect(passed.length).toBeGreaterThan(1);
        if (cords > 2)
          passed.slice(1).forEach((over, index) => {
            expect(over).toBe(!passed[index]);
          });
      }
    },
  );

  test("mirrored cables lie over to opposite sides, and a plaited one to either in turn", async () => {
    const { cables, ladders, fields } = await sceneOfSample("mirrored-cables");
    for (const { from, to, over } of cables) expect(over).toBe(from + to < 0 ? "left" : "right");
    expect(ladders.map(({ needle }) => needle)).toEqual([-7, -2, 2, 7]);
    for (const { fromRow, toRow } of ladders)
      expect([fromRow, toRow]).toEqual([fields[0]!.firstRow, fields[0]!.lastRow]);
    const plaited = (await sceneOfSample("plaited-cable")).cables;
    for (const [index, { over }] of plaited.entries()) expect(over).toBe(index % 2 === 0 ? "left" : "right");
  });
});

describe("standing loops", () => {
  test("are as long on the drawing as their cord, and stand off outward", async () => {
    const { strands, gauge } = await sceneOfSample("standing-loops");
    const { line, hangings } = strands[0]!;
    const loops = hangings.filter(({ loop }) => loop);
    expect(loops.length).toBeGreaterThan(2);
    for (const to of loops) {
      const end = line.indexOf(to);
      const start = line.indexOf(hangings[hangings.indexOf(to) - 1]!);
      const points = line.slice(start, end + 1);
      const lengthMm = points
        .slice(1)
        .reduce(
          (sum, { xMm, yMm }, index) => sum + Math.hypot(xMm - points[index]!.xMm, yMm - points[index]!.yMm),
          0,
        );
      const cordMm = (to.count * gauge.cord!.overMm) / gauge.cord!.stitches;
      expect(lengthMm / cordMm).toBeCloseTo(1, 2);
      const furthest = points[Math.floor(points.length / 2)]!;
      expect(Math.sign(furthest.xMm)).toBe(Math.sign(to.xMm));
      expect(Math.abs(furthest.xMm)).toBeGreaterThan(Math.abs(to.xMm) + 5);
    }
  });

  test("are counted as the file says, and left out of the ease", async () => {
    const fit = await fitOf(textOf("standing-loops"));
    const { segments } = fit.looks[0]!;
    expect(segments.find(({ name }) => name === "loop")).toMatchObject({ fixed: 10, pickup: 10 });
    const eased = segments.filter(({ fixed }) => fixed === undefined);
    const away = eased.reduce((sum, { ease }) => sum + 100 * Math.abs(ease - 0.02), 0) / eased.length;
    expect(fit.terms.find(({ term }) => term === "ease")?.amount).toBeCloseTo(away, 9);
  });
});

describe("a band", () => {
  test("is whole across and upward, and says at each repeat where the card starts", async () => {
    const fit = await fitOf(textOf("band"));
    const [placement] = fit.placements;
    const { margins, columns, repeats, firstRow, lastRow } = placement!;
    expect(margins).toMatchObject({ left: 0, right: 0 });
    expect(12 * columns + 2).toBe(50);
    expect(lastRow - firstRow).toBe(16 * repeats);
    const acts = buildSheet(fit).pieces[0]!.rows.flatMap(({ row, do: actions }) =>
      actions.filter(({ act }) => act === "pattern" || act === "plain").map((action) => ({ row, ...action })),
    );
    expect(acts.map(({ row }) => row)).toEqual(
      [...Array(repeats + 1).keys()].map((done) => firstRow + 16 * done),
    );
    expect(acts[0]).toMatchObject({
      from: -25,
      to: 25,
      across: 4,
      card: { row: 1, stitch: 13, stitches: 24 },
    });
  });
});

test("the drawings for a terminal show ladders and frames", async () => {
  const text = async (name: string): Promise<string> =>
    chartText(await sceneOfSample(name), { view: "knitter", columns: 100, glyphs: "ascii" });
  expect(
    (await text("mirrored-cables")).split("\n").filter((line) => line.includes("=")).length,
  ).toBeGreaterThan(5);
  expect((await text("band")).split("\n").filter((line) => /-{60}/.test(line)).length).toBeGreaterThan(3);
});

test("the worked example of DEVELOPERS.md runs as it stands", async () => {
  const example = /### A motif from nothing[\s\S]*?```yaml\n([\s\S]*?)```/.exec(
    readFileSync("DEVELOPERS.md", "utf8"),
  )?.[1];
  expect(example).toBeDefined();
  const fit = await fitOf(example!);
  const motif = (parse(example!) as GarmentFile).motifs.ropes as CordEntry;
  expect(Object.keys(motif.strands)).toEqual(["left", "right"]);
  const overs = crossingsOf(sceneOf(fit, "panel")).map(([over]) => over);
  expect(overs.length).toBe(fit.placements[0]!.repeats);
  expect(overs.length).toBeGreaterThan(1);
  overs.forEach((over, index) => {
    expect(over).toBe(index % 2 === 0 ? "left" : "right");
  });
});
