import { readFileSync } from "node:fs";
import fc from "fast-check";
import stringWidth from "string-width";
import { describe, expect, test } from "vitest";
import { sceneOf } from "../../../src/draw/scene.ts";
import type { GlyphSet } from "../../../src/draw/terminal/glyph-sets.ts";
import type { TerminalOptions } from "../../../src/draw/terminal/options.ts";
import { drawInTerminal } from "../../../src/draw/terminal.ts";
import { chartText } from "../../../src/draw/text.ts";
import { fitOfText, sampleNames, sampleText, sceneOfSample } from "./support/scenes.ts";

const sizes = [
  { columns: 76, rows: 20 },
  { columns: 60, rows: 16 },
  { columns: 136, rows: 41 },
] as const;

const glyphSets: readonly GlyphSet[] = ["braille", "blocks", "ascii"];

describe.each(sampleNames)("the drawing of %s", async (name) => {
  const scene = await sceneOfSample(name);

  test.each(sizes)("at $columns by $rows", (size) => {
    expect(drawInTerminal(scene, { ...size, glyphs: "braille" }).lines.join("\n")).toMatchSnapshot("braille");
    expect(drawInTerminal(scene, { ...size, glyphs: "ascii" }).lines.join("\n")).toMatchSnapshot("ascii");
  });

  test("is the same again, fits its size in any characters, and its runs make its lines", () => {
    for (const glyphs of glyphSets)
      for (const size of sizes)
        for (const zoom of [1, 4]) {
          const options = { ...size, glyphs, zoom };
          const { lines, runs } = drawInTerminal(scene, options);
          expect(drawInTerminal(scene, options).lines).toEqual(lines);
          expect(lines).toHaveLength(size.rows);
          for (const line of lines) expect(stringWidth(line)).toBeLessThanOrEqual(size.columns);
          expect(
            runs.map((row) =>
              row
                .map(({ text }) => text)
                .join("")
                .trimEnd(),
            ),
          ).toEqual(lines);
        }
  });

  test("has as many columns for its width as half its height has rows", () => {
    for (const glyphs of glyphSets) {
      const { runs } = drawInTerminal(scene, {
        columns: 136,
        rows: 41,
        glyphs,
        layers: { rowNumbers: false },
      });
      const cells = runs.map((row) =>
        row.flatMap(({ text, role }) => [...text].map((character) => ({ character, role }))),
      );
      const outline = cells.flatMap((row, y) =>
        row.flatMap(({ role }, x) => (role === "outline" ? [{ x, y }] : [])),
      );
      const wide = Math.max(...outline.map(({ x }) => x)) - Math.min(...outline.map(({ x }) => x)) + 1;
      const high = 2 * (Math.max(...outline.map(({ y }) => y)) - Math.min(...outline.map(({ y }) => y)) + 1);
      const { stitch, widest, rows } = scene;
      const wanted = ((widest.to - widest.from) * stitch.widthMm) / (rows * stitch.heightMm);
      // Off by at most one cell at each of both ends of each direction.
      expect(wanted).toBeGreaterThan((wide - 2) / (high + 2));
      expect(wanted).toBeLessThan((wide + 2) / (high - 2));
    }
  });

  test("in ASCII is ASCII only", () => {
    for (const zoom of [1, 2, 8])
      for (const line of drawInTerminal(scene, { columns: 100, rows: 40, glyphs: "ascii", zoom }).lines)
        expect(line).toMatch(/^[\x20-\x7e]*$/);
  });

  test("names its marks beside their rows, and its outermost needles", () => {
    const { lines } = drawInTerminal(scene, { columns: 136, rows: 41, glyphs: "braille" });
    for (const { name: mark, row } of scene.marks)
      expect(
        lines.some(
          (line) => line.startsWith(`${row}`.padStart(String(scene.rows).length)) && line.endsWith(mark),
        ),
      ).toBe(true);
    const needles = lines.at(-1)!.trim().split(/ +/);
    expect([needles[0], needles.at(-1)]).toEqual([`L${-scene.widest.from}`, `R${scene.widest.to}`]);
  });

  test("leaves out the layers that are switched off", () => {
    const rolesWithout = (layers: TerminalOptions["layers"]) =>
      new Set(
        drawInTerminal(scene, { columns: 136, rows: 90, glyphs: "braille", ...(layers && { layers }) })
          .runs.flat()
          .map(({ role }) => role),
      );
    expect(rolesWithout(undefined)).toEqual(
      new Set(["plain", "label", "outline", "strand", "mark", "panel", "unreachable"]),
    );
    expect(
      rolesWithout({
        motif: false,
        marks: false,
        panels: false,
        unreachable: false,
        rowNumbers: false,
        needleNames: false,
      }),
    ).toEqual(new Set(["plain", "outline"]));
  });
});

describe("where strands cross", () => {
  test("the one below is broken on both sides of the one above", async () => {
    const scene = await sceneOfSample("sleeve");
    const drawn = drawInTerminal(scene, {
      columns: 76,
      rows: 40,
      glyphs: "braille",
      zoom: 8,
      layers: { panels: false },
    });
    const strands = new Map<number, number>();
    for (const { role, strand, text } of drawn.runs.flat())
      if (role === "strand") strands.set(strand!, (strands.get(strand!) ?? 0) + dotsIn(text));
    // Both strands are as long, and only the left one is ever under.
    expect(strands.get(0)!).toBeLessThan(0.9 * strands.get(1)!);
  });

  const dotsIn = (text: string): number =>
    [...text].reduce((sum, character) => {
      const bits = character.codePointAt(0)! - 0x2800;
      return sum + (bits > 0 && bits < 256 ? bits.toString(2).replaceAll("0", "").length : 0);
    }, 0);

  test("in ASCII the character of the one above stands at the crossing", async () => {
    const scene = await sceneOfSample("front");
    const { lines } = drawInTerminal(scene, {
      columns: 76,
      rows: 20,
      glyphs: "ascii",
      zoom: 8,
      scroll: { across: 0, up: 0.2 },
    });
    expect(lines.join("\n")).toMatchSnapshot();
  });
});

describe("hangings", () => {
  test("are ringed and counted where the drawing is large enough, and not before", async () => {
    const scene = await sceneOfSample("front");
    const strandText = (zoom: number) =>
      drawInTerminal(scene, { columns: 76, rows: 20, glyphs: "braille", zoom })
        .runs.flat()
        .filter(({ role }) => role === "strand")
        .map(({ text }) => text)
        .join("");
    expect(strandText(1)).not.toContain("o");
    expect(strandText(8)).toMatch(/10o|o10/);
  });
});

describe("scrolling", async () => {
  const scene = await sceneOfSample("scarf");
  const options = { columns: 60, rows: 20, glyphs: "braille" } as const;

  test("without a zoom has nothing to do", () => {
    expect(drawInTerminal(scene, { ...options, scroll: { across: 3, up: -3 } }).scroll).toEqual({
      across: 0,
      up: 0,
    });
  });

  test("stops at the piece's ends, where its last row and its cast-on are in view", () => {
    const top = drawInTerminal(scene, { ...options, zoom: 4, scroll: { across: 0, up: 99 } });
    const bottom = drawInTerminal(scene, { ...options, zoom: 4, scroll: { across: 0, up: -99 } });
    expect(top.lines[0]).toMatch(/^315. .*bind-off$/);
    expect(bottom.lines.at(-2)).toMatch(/^ {2}0. .*cast-on$/);
    expect(top.scroll.up).toBeCloseTo(-bottom.scroll.up, 9);
    expect(drawInTerminal(scene, { ...options, zoom: 4, scroll: top.scroll }).lines).toEqual(top.lines);
  });
});

test("any size, zoom and scroll gives a drawing that fits", async () => {
  const scenes = await Promise.all(sampleNames.map(sceneOfSample));
  const anyOptions = fc.record({
    columns: fc.integer({ min: 1, max: 200 }),
    rows: fc.integer({ min: 1, max: 60 }),
    glyphs: fc.constantFrom(...glyphSets),
    view: fc.constantFrom("knitter" as const, "worn" as const),
    zoom: fc.constantFrom(1, 2, 4, 16),
    scroll: fc.record({
      across: fc.double({ min: -9, max: 9, noNaN: true }),
      up: fc.double({ min: -9, max: 9, noNaN: true }),
    }),
  });
  fc.assert(
    fc.property(anyOptions, fc.constantFrom(...scenes), (options, scene) => {
      const { lines, scroll } = drawInTerminal(scene, options);
      expect(lines).toHaveLength(options.rows);
      for (const line of lines) expect(stringWidth(line)).toBeLessThanOrEqual(options.columns);
      expect(Number.isFinite(scroll.across) && Number.isFinite(scroll.up)).toBe(true);
    }),
    { seed: 97, numRuns: 200 },
  );
});

test("seen as worn, a cable's piece is mirrored", async () => {
  const scene = await sceneOfSample("cable-sleeve");
  const { lines } = drawInTerminal(scene, { columns: 76, rows: 20, glyphs: "ascii", view: "worn" });
  expect(lines.at(-1)!.trim().split(/ +/)[0]).toBe("R50");
  expect(lines[0]).toMatch(/^163> /);
  expect(drawInTerminal(scene, { columns: 76, rows: 20, glyphs: "ascii" }).lines[0]).toMatch(/^163< /);
});

describe("names from files", () => {
  test("are cut at a third of the width, kept from steering the terminal, and without accents in ASCII", async () => {
    const text = sampleText("sleeve")
      .replace("rib top: 4 cm", '"Bünd\\u001b[2J oben": 4 cm')
      .replace("from: rib top", '"from": "Bünd\\u001b[2J oben"');
    const scene = sceneOf(await fitOfText(text), "sleeve");
    const labelOf = (options: Partial<TerminalOptions>): string =>
      drawInTerminal(scene, { columns: 120, rows: 20, glyphs: "braille", ...options })
        .lines.find((line) => line.includes("nd\\u"))!
        .replace(/^.* (?=B)/, "");
    expect(labelOf({})).toBe("Bünd\\u001b[2J oben");
    expect(labelOf({ glyphs: "ascii" })).toBe("Bund\\u001b[2J oben");
    expect(labelOf({ columns: 45 })).toBe("Bünd\\u001b[2J~");
  });
});

describe("the chart as text", () => {
  test("is headed by title, piece, side and gauge, and explains what is in it", async () => {
    const text = chartText(await sceneOfSample("cable-sleeve"), {
      view: "worn",
      columns: 80,
      glyphs: "ascii",
    });
    const lines = text.split("\n");
    expect(lines[0]).toBe("Sleeve with a cable: sleeve, as worn");
    expect(lines[1]).toBe("the knit side is worn, so left and right change places");
    expect(lines[2]).toBe("27 stitches and 38 rows over 10 cm; starts on 62 needles, L31 to R31; 163 rows");
    const words = text.replace(/\n {2}/g, " ");
    expect(words).toContain(
      "rope: 15 repeats, rows 27 to 147; free: 4 rows below, 5 rows above, 31 needles at the left, 31 at the right.",
    );
    expect(words).toContain(
      "Shaping: increase 1 at each side on row 4, then every 8th row 18 times, to row 148.",
    );
    expect(words).toContain("Left and right in these words are the knitter's at the bed.");
    expect(text).toContain("Of two groups that cross, the broken one lies behind the other.");
    expect(text).not.toContain("hanging");
    expect(text).toMatch(/^[\x20-\x7e\n]*$/);
  });

  test("has hangings with their counts where it is wide enough, and says so where it is not", async () => {
    const scene = await sceneOfSample("sleeve");
    const [narrow, wide] = [80, 200].map((columns) =>
      chartText(scene, { view: "knitter", columns, glyphs: "ascii" }),
    );
    expect(narrow!.replace(/\n {2}/g, " ")).toContain(
      "for their counts a larger drawing, or the sheet, has room",
    );
    expect(narrow).not.toContain("o is a hanging");
    expect(wide).toContain("o is a hanging, the number beside it its count.");
    expect(wide!.match(/5o|o5/g)!.length).toBeGreaterThan(20);
  });

  test.each([
    ["standing-loops", "goes round in a ring it stands off as a loop"],
    ["mirrored-cables", "Rungs are a needle out of work"],
    ["band", "Frames are the repeats of a pattern"],
  ])("of the sample %s says what its drawing means", async (name, words) => {
    const fit = await fitOfText(readFileSync(`samples/motifs/${name}.yaml`, "utf8"));
    const scene = sceneOf(fit, fit.placements[0]!.piece);
    expect(chartText(scene, { view: "knitter", columns: 100, glyphs: "ascii" })).toContain(words);
    expect(
      chartText(await sceneOfSample("sleeve"), { view: "knitter", columns: 100, glyphs: "ascii" }),
    ).not.toContain(words);
  });

  test("of a long piece stays within its rows", async () => {
    const text = chartText(await sceneOfSample("scarf"), {
      view: "knitter",
      columns: 160,
      glyphs: "braille",
    });
    expect(text.split("\n").length).toBeLessThan(135);
    expect(text).toContain("Where strands cross, the broken one lies under.");
  });
});

describe("the chart as text, part by part", async () => {
  const charts = await Promise.all(
    sampleNames.flatMap((name) =>
      (["knitter", "worn"] as const).map(async (view) => ({ name, view, scene: await sceneOfSample(name) })),
    ),
  );

  describe.each(charts)("of $name, view $view", ({ view, scene }) => {
    const drawn = (columns: number): readonly string[] =>
      chartText(scene, { view, columns, glyphs: "ascii" }).split("\n");

    test("has every row number at both sides, with one and the same side for the carriage", () => {
      for (const columns of [80, 140]) {
        const numbered = drawn(columns).flatMap((line) => {
          const left = /^ *(\d+)([<>]) /.exec(line);
          return left ? [{ line, row: Number(left[1]), side: left[2]! }] : [];
        });
        expect(numbered.length).toBeGreaterThan(5);
        for (const { line, row, side } of numbered) {
          expect(line.slice(5)).toContain(` ${row}${side}`);
          const rests = scene.carriage[row] === "left" ? "<" : ">";
          const turned = view === "worn" && scene.worn === "far";
          expect(side === rests).toBe(!turned);
        }
        for (const { row } of scene.marks) expect(numbered.map((one) => one.row)).toContain(row);
      }
    });

    test("has each step of shaping at both edges, as often as the sheet asks for it", () => {
      const count = (sign: string, lines: readonly string[]): number =>
        lines.join("\n").match(new RegExp(`\\${sign}\\d+`, "g"))?.length ?? 0;
      const lines = drawn(140).filter((line) => !/^[A-Z+]/.test(line.trimStart()));
      const steps = scene.shaping.filter(({ side, edge }) => side !== undefined || edge === "neck");
      const grows = steps.filter(({ kind }) => kind === "increase" || kind === "cast-on").length;
      expect([count("+", lines), count("-", lines)]).toEqual([grows, steps.length - grows]);
    });

    test("has the margins of each motif, drawn and in words", () => {
      const text = drawn(140).join("\n");
      for (const { margins } of scene.fields) {
        if (margins.bottom >= 10) expect(text).toContain(`${margins.bottom} rows free`);
        if (margins.top >= 10) expect(text).toContain(`${margins.top} rows free`);
        expect(text.match(new RegExp(`<-+ ${margins.left}(?: needles)? -+>`, "g"))?.length).toBeGreaterThan(
          0,
        );
        expect(text).toContain(`${margins.bottom} rows below, ${margins.top} rows above`);
      }
    });

    test("names its side, its needles and its halves", () => {
      const text = drawn(140).join("\n");
      expect(text).toContain(view === "knitter" ? "as the knitter sees it" : "as worn");
      const needles = drawn(140)
        .find((line) => /^ *[LR]\d+ /.test(line))!
        .trim()
        .split(/ +/);
      const outermost = [`L${-scene.widest.from}`, `R${scene.widest.to}`];
      const turned = view === "worn" && scene.worn === "far";
      expect([needles[0], needles.at(-1)]).toEqual(turned ? outermost.toReversed() : outermost);
      if (scene.neck) expect(text).toMatch(/second half.*first half/);
    });
  });
});
