import { readFileSync } from "node:fs";
import { transform } from "esbuild";
import { describe, expect, test, vi } from "vitest";
import { BUILT_IN_SHAPES } from "../../src/shape/builtin/index.ts";
import type { ShapeDescription } from "../../src/shape/description.ts";
import { NECKS } from "../../src/shape/necks/index.ts";
import { SIZES } from "../../src/sizes/body.ts";
import { FITS } from "../../src/sizes/fits.ts";
import { knit } from "../support/bed-simulator.ts";
import { sheetPiecesOf } from "../support/sheet-of.ts";

const sectionOf = (file: string, heading: string): string =>
  new RegExp(`\n### ${heading}\n([\\s\\S]*?)\n##`).exec(readFileSync(file, "utf8"))?.[1] ?? "";

const namesIn = (text: string): readonly string[] =>
  [...text.matchAll(/`(?:\w+: )?([^`]+)`/g)].map(([, name]) => name!);

describe("the README's table of shapes", () => {
  const section = sectionOf("README.md", "Shapes and sizes");
  const rows = section
    .split("\n")
    .filter((line) => line.startsWith("| `"))
    .map((line) => line.split("|"))
    .map(([, shapes, says]) => ({ shapes: namesIn(shapes!), says: says! }));

  /** What a row says may be written, with what it takes over from the row of another sleeve. */
  function saidIn(says: string): readonly string[] {
    const other = /those of the (\w+) one/.exec(says)?.[1];
    const from = rows.find(({ shapes }) => other !== undefined && shapes.includes(`${other} sleeve`));
    return [...namesIn(says), ...(from ? saidIn(from.says) : [])];
  }

  test("has each shape once", () => {
    expect(rows.flatMap(({ shapes }) => shapes)).toEqual([...BUILT_IN_SHAPES.keys()]);
  });

  test.each(rows)("names all that may be written of $shapes, and nothing else", ({ shapes, says }) => {
    const known = shapes.flatMap((shape) => {
      const { measurements, choices = {} } = BUILT_IN_SHAPES.get(shape)!;
      const words = Object.values(choices).flatMap((choice) => choice.words);
      return [...Object.keys(measurements), ...words, ...(choices.neck ? ["neck depth"] : [])];
    });
    expect(new Set(saidIn(says))).toEqual(new Set(known));
  });

  test("names each fit, each kind of size, each neckline and each mark", () => {
    for (const fit of FITS.keys()) expect(section).toContain(`\`${fit}\``);
    for (const neck of NECKS.keys()) expect(section).toMatch(new RegExp(`\`(neck: )?${neck}\``));
    for (const { marks } of BUILT_IN_SHAPES.values())
      for (const mark of Object.keys(marks)) expect(section).toContain(`\`${mark}\``);
    const named = [...section.matchAll(/`((?:baby|child|woman|man) [^`]+)`/g)].map(([, size]) => size!);
    expect(named).toHaveLength(7);
    for (const size of named) expect(SIZES.has(size), size).toBe(true);
  });
});

test("the worked example of DEVELOPERS.md runs as it stands", async () => {
  const section = sectionOf("DEVELOPERS.md", "A shape from nothing");
  const [, source] = /```ts\n([\s\S]*?)```/.exec(section) ?? [];
  const [, text] = /```yaml\n([\s\S]*?)```/.exec(section) ?? [];
  const [, entry] = /`\["([^"]+)", cushionCover\]`/.exec(section) ?? [];
  const { code } = await transform(source!, { loader: "ts" });
  const { cushionCover } = (await import(
    /* @vite-ignore */ `data:text/javascript,${encodeURIComponent(code)}`
  )) as { cushionCover: ShapeDescription };
  vi.resetModules();
  vi.doMock("../../src/shape/builtin/index.ts", () => ({
    BUILT_IN_SHAPES: new Map([...BUILT_IN_SHAPES, [entry!, cushionCover]]),
  }));
  try {
    const { fitHere, soundGarment } = await import("../support/run-garment.ts");
    const garment = soundGarment(text!);
    // 40 cm less a twentieth, twice, and a flap of 8 cm that ends half as wide.
    const { outline, marks } = garment.pieces[0]!;
    expect(outline[0]).toEqual({ heightMm: 0, widthMm: 380 });
    expect(outline.at(-1)).toEqual({ heightMm: 840, widthMm: 190 });
    expect(marks).toContainEqual({ name: "fold", heightMm: 380 });
    const result = await fitHere(garment);
    if (result.status !== "fits") throw new Error(`nothing fits: ${result.status}`);
    const sheetPieces = sheetPiecesOf(result.fit);
    expect(knit(sheetPieces[0]!).violations).toEqual([]);
  } finally {
    vi.doUnmock("../../src/shape/builtin/index.ts");
  }
});
