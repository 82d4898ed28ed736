import { execFile } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { decode } from "fast-png";
import { XMLValidator } from "fast-xml-parser";
import { afterAll, describe, expect, test } from "vitest";

const folder = mkdtempSync(join(tmpdir(), "evenrow-chart-"));
afterAll(() => rmSync(folder, { recursive: true }));

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

function chart(words: readonly string[], environment: Readonly<Record<string, string>> = {}): Promise<Ended> {
  const env = { ...process.env, LC_ALL: "C.UTF-8", TERM: "xterm", ...environment };
  return new Promise((resolve) => {
    execFile(
      process.execPath,
      ["dist/evenrow.js", "chart", ...words],
      { env, maxBuffer: 1e8 },
      (error, out, err) => resolve({ code: error ? Number(error.code) : 0, out, err }),
    );
  });
}

const inFolder = (name: string): string => join(folder, name);

describe("the form of a chart", () => {
  test("on standard output that is no terminal is SVG, and words go to standard error", async () => {
    const { code, out, err } = await chart(["samples/sleeve.yaml"]);
    expect(code).toBe(0);
    expect(XMLValidator.validate(out)).toBe(true);
    expect(out).toContain("as the knitter sees it");
    expect(err).not.toContain("<svg");
  });

  test("goes by the output's ending, and an output that exists is kept unless forced", async () => {
    const svg = inFolder("front.svg");
    const written = await chart(["samples/front.yaml", "-o", svg, "--view", "both"]);
    expect([written.code, written.err]).toEqual([0, expect.stringContaining(`Wrote ${svg}.`)]);
    const content = readFileSync(svg, "utf8");
    expect(XMLValidator.validate(content)).toBe(true);
    expect([content.includes('data-view="knitter"'), content.includes('data-view="worn"')]).toEqual([
      true,
      true,
    ]);
    const again = await chart(["samples/front.yaml", "-o", svg]);
    expect([again.code, again.err]).toEqual([2, expect.stringContaining("exists already")]);
    expect(readFileSync(svg, "utf8")).toBe(content);
    expect((await chart(["samples/front.yaml", "-o", svg, "--force", "--view", "worn"])).code).toBe(0);
    expect(readFileSync(svg, "utf8")).not.toContain('data-view="knitter"');
  });

  test("as PNG is a picture", async () => {
    const png = inFolder("sleeve.png");
    expect((await chart(["samples/sleeve.yaml", "-o", png])).code).toBe(0);
    const { width, height } = decode(readFileSync(png));
    expect(Math.min(width, height)).toBeGreaterThan(400);
  });

  test("as PNG asks for a file", async () => {
    const { code, out, err } = await chart(["samples/sleeve.yaml", "--format", "png"]);
    expect([code, out, err]).toEqual([2, "", expect.stringContaining("--output chart.png")]);
  });

  test("as text is drawn in braille, and in ASCII where the locale or the terminal knows no more", async () => {
    const words = ["samples/sleeve.yaml", "--format", "text"];
    expect((await chart(words)).out).toMatch(/[\u2801-\u28ff]/);
    expect((await chart(words, { LC_ALL: "C" })).out).toMatch(/^[\x20-\x7e\n]*$/);
    expect((await chart(words, { TERM: "dumb" })).out).toMatch(/^[\x20-\x7e\n]*$/);
  });

  test("that no ending tells is asked for, before anything is written", async () => {
    const { code, err } = await chart(["samples/sleeve.yaml", "-o", inFolder("sleeve.doc")]);
    expect([code, err]).toEqual([2, expect.stringContaining("--format svg, png or text")]);
    expect(existsSync(inFolder("sleeve.doc"))).toBe(false);
  });
});

describe("what is charted", () => {
  const two = readFileSync("samples/sleeve.yaml", "utf8")
    .replace(
      "pieces:\n",
      "pieces:\n  back: { outline: [{ height: 0 cm, width: 40 cm }, { height: 20 cm, width: 40 cm }] }\n",
    )
    .replace("title: Sleeve with a crossed cord", `title: 'Sleeve <&"'`);
  const file = inFolder("two.yaml");
  writeFileSync(file, two);

  test("is every piece, in the order of the file, with its title escaped", async () => {
    const { out } = await chart([file]);
    expect([...out.matchAll(/data-piece="(\w+)"/g)].map(([, piece]) => piece)).toEqual(["back", "sleeve"]);
    expect(out).toContain("Sleeve &lt;&amp;&quot;");
  });

  test("is one piece by its name, and the nearest name is offered for one that is not there", async () => {
    const one = await chart([file, "--piece", "back"]);
    expect([...one.out.matchAll(/data-piece="(\w+)"/g)].map(([, piece]) => piece)).toEqual(["back"]);
    const none = await chart([file, "--piece", "sleve"]);
    expect([none.code, none.err]).toEqual([2, expect.stringContaining('Did you mean "sleeve"?')]);
  });
});

test("the chart that the README shows is the one that is drawn", async () => {
  const { out } = await chart(["samples/sleeve.yaml"]);
  await expect(out).toMatchFileSnapshot("../../../../samples/pictures/sleeve-chart.svg");
});

test("words that an option does not take are refused with those it takes", async () => {
  const { code, err } = await chart(["samples/sleeve.yaml", "--view", "back"]);
  expect([code, err]).toEqual([2, expect.stringContaining("knitter, worn and both")]);
});

test("where nothing fits the rules that fail to meet are named, with exit code 1 and no chart", async () => {
  const { code, out, err } = await chart(["samples/too-narrow.yaml", "-o", inFolder("none.svg")]);
  expect([code, out]).toEqual([1, ""]);
  expect(err).toContain("spread 6 to 9 needles (line 17)");
  expect(existsSync(inFolder("none.svg"))).toBe(false);
});
