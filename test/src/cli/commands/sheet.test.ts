import { execFile } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { XMLValidator } from "fast-xml-parser";
import { afterAll, describe, expect, test } from "vitest";
import { run } from "../../../../src/cli/commands/sheet.ts";
import { CommandError } from "../../../../src/cli/exit-codes.ts";
import { printedPages } from "../../../support/printed-pages.ts";

const folder = mkdtempSync(join(tmpdir(), "evenrow-sheet-"));
afterAll(() => rmSync(folder, { recursive: true }));

interface Ended {
  readonly code: number;
  readonly out: Buffer;
  readonly err: string;
}

const sheet = (...words: readonly string[]): Promise<Ended> =>
  new Promise((resolve) => {
    execFile(
      process.execPath,
      ["dist/evenrow.js", "sheet", ...words],
      { encoding: "buffer", maxBuffer: 1e8 },
      (error, out, err) => resolve({ code: error ? Number(error.code) : 0, out, err: err.toString() }),
    );
  });

const inFolder = (name: string): string => join(folder, name);

describe("the form of a sheet", () => {
  test("is text where nothing else is said", async () => {
    const { code, out } = await sheet("samples/sleeve.yaml");
    expect([code, out.toString().split("\n")[0]]).toEqual([0, "Sleeve with a crossed cord: working sheet"]);
  });

  test("is HTML by an option, with the program's typeface and the chart in it", async () => {
    const { code, out } = await sheet("samples/sleeve.yaml", "--html");
    const html = out.toString();
    expect([code, XMLValidator.validate(html)]).toEqual([0, true]);
    expect(html.match(/@font-face/g)).toHaveLength(2);
    expect(html).toContain("as the knitter sees it");
  });

  test("goes by the output's ending", async () => {
    const html = inFolder("front.html");
    const pdf = inFolder("front.pdf");
    const text = inFolder("front.txt");
    for (const file of [html, pdf, text]) {
      const { code, err } = await sheet("samples/front.yaml", "-o", file);
      expect([code, err]).toEqual([0, expect.stringContaining(`Wrote ${file}.`)]);
    }
    expect(readFileSync(html, "utf8")).toMatch(/^<!DOCTYPE html>/);
    expect(readFileSync(pdf, "latin1")).toMatch(/^%PDF-/);
    expect(readFileSync(text, "utf8")).toMatch(/^Front with a cord/);
  });

  test("is one at a time", async () => {
    const { code, err } = await sheet("samples/sleeve.yaml", "--html", "--json");
    expect([code, err]).toEqual([2, expect.stringContaining("--json, --html")]);
  });
});

describe("a PDF", () => {
  test("goes into a pipe as well, on A4, and is the same each time", async () => {
    const [one, other] = [
      await sheet("samples/sleeve.yaml", "--pdf"),
      await sheet("samples/sleeve.yaml", "--pdf"),
    ];
    expect(one.code).toBe(0);
    expect(one.out.equals(other.out)).toBe(true);
    const [page] = await printedPages(new Uint8Array(one.out));
    expect([Math.round(page!.width), Math.round(page!.height)]).toEqual([595, 842]);
  });

  test("is made for US Letter where that is asked for, its chart nearly as wide as the paper", async () => {
    const file = inFolder("letter.pdf");
    expect((await sheet("samples/sleeve.yaml", "-o", file, "--paper", "letter")).code).toBe(0);
    const pages = await printedPages(new Uint8Array(readFileSync(file)));
    expect([Math.round(pages[0]!.width), Math.round(pages[0]!.height)]).toEqual([612, 792]);
    const [chart] = pages.flatMap(({ images }) => images);
    expect(chart!.right - chart!.left).toBeGreaterThan(400);
  });

  test("never goes to a terminal", async () => {
    const asked = run({
      operands: ["samples/sleeve.yaml"],
      options: { pdf: true },
      terminal: {
        out: () => undefined,
        say: () => undefined,
        columns: 80,
        interactive: true,
        readStdin: async () => new Uint8Array(),
      },
    });
    await expect(asked).rejects.toThrow(CommandError);
    await expect(asked).rejects.toThrow("--output sheet.pdf");
  });

  test("takes A4 and US Letter alone, and no other form takes a paper", async () => {
    const wrong = await sheet("samples/sleeve.yaml", "--pdf", "--paper", "a5");
    expect([wrong.code, wrong.err]).toEqual([2, expect.stringContaining("a4 and letter")]);
    const html = await sheet("samples/sleeve.yaml", "--html", "--paper", "letter");
    expect([html.code, html.err]).toEqual([2, expect.stringContaining("--paper belongs to --pdf")]);
  });
});

test("one piece is asked for by its name", async () => {
  const { code, err } = await sheet("samples/sleeve.yaml", "--piece", "slevee");
  expect([code, err]).toEqual([2, expect.stringContaining('Did you mean "sleeve"?')]);
  const { out } = await sheet("samples/sleeve.yaml", "--piece", "sleeve", "--json");
  expect(JSON.parse(out.toString()).pieces).toHaveLength(1);
});

test("where nothing fits there is no sheet, and the exit code is 1", async () => {
  const file = inFolder("none.pdf");
  const { code, err } = await sheet("samples/too-narrow.yaml", "-o", file);
  expect([code, err]).toEqual([1, expect.stringContaining("Nothing fits")]);
  expect(existsSync(file)).toBe(false);
});
