import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the command with an input and without a terminal. */
const gauge = (words: readonly string[], input = ""): Promise<Ended> =>
  new Promise((resolve) => {
    const child = spawn(process.execPath, ["dist/evenrow.js", "gauge", ...words]);
    let out = "";
    let err = "";
    child.stdout.on("data", (bytes) => {
      out += String(bytes);
    });
    child.stderr.on("data", (bytes) => {
      err += String(bytes);
    });
    child.on("close", (code) => resolve({ code, out, err }));
    child.stdin.end(input);
  });

const ground = "40 stitches 18.2 cm, 60 rows 19.4 cm";
const washed = "washed: 40 stitches 17.8 cm, 60 rows 18.6 cm";
const cord = "cord on 3 needles: 50 stitches 26 cm";

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "evenrow-gauge-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

const copyOf = (name: string, text: string): string => {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
};

describe("gauge", () => {
  test("takes the same from standard input, one answer a line", async () => {
    const asked = await gauge([], `${ground}\n\n${washed}\n\n${cord}\n`);
    expect(asked).toEqual(await gauge([ground, washed, cord]));
  });

  test("writes a form for programs", async () => {
    const { out } = await gauge([ground, washed, cord, "--json"]);
    expect(JSON.parse(out)).toMatchObject({
      format: "evenrow-gauge/1",
      over_mm: 100,
      ground: {
        stitches: { count: 22.4719, spread: 0 },
        rows: { count: 32.2581 },
        swatches: 1,
        washed: true,
        washing: { width: -0.02198, height: -0.04124 },
      },
      cord: { needles: 3, stitches: { count: 19.2308 }, washed: false },
    });
  });

  test("writes the gauge into a garment file, and changes nothing else", async () => {
    const sample = readFileSync("samples/sleeve.yaml", "utf8");
    const again = "Measured unwashed: wash and rest it as the garment will be, and measure again.";
    const file = copyOf("sleeve.yaml", sample);
    const { code, err } = await gauge([washed, cord, "--into", file]);
    expect([code, err]).toEqual([0, `Wrote the gauge into ${file}.\n`]);
    expect(readFileSync(file, "utf8")).toBe(
      sample
        .replace("  ground: { st", "  # Measured washed.\n  ground: { st")
        .replace("  cord: { ne", `  # ${again}\n  cord: { ne`)
        .replace(
          "ground: { stitches: 22, rows: 31, over: 10 cm }",
          "ground: { stitches: 40, rows: 60, over: 17.8 cm, rows over: 18.6 cm, within: { stitches: 0.7 %, rows: 0.5 % } }",
        )
        .replace("stitches: 19, over: 10 cm", "stitches: 50, over: 26 cm, within: 0.6 %"),
    );
    expect((await gauge([washed, cord, "--into", file])).err).toBe(`${file} says this gauge already.\n`);
  });

  test("leaves a file alone in which the gauge would be a mistake", async () => {
    const text = "format: evenrow/1\ngauge:\n  ground: { stitches: 22, rows: 31, over: 10 cm }\n";
    const file = copyOf("without-needles.yaml", text);
    const { code, out, err } = await gauge(["cord: 50 stitches 26 cm", "--into", file]);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain("needles");
    expect(readFileSync(file, "utf8")).toBe(text);
  });

  test.each([
    ["words that are no swatch", ["40 stitches"], "expected: 40 stitches 18.2 cm"],
    ["no swatch at all", [], "needs a swatch"],
    ["two kinds of cord", [cord, "cord on 4 needles: 50 stitches 30 cm"], "3 and 4 needles"],
    [
      "a file that is not there",
      [ground, "--into", "no-such-file.yaml"],
      "make one first: evenrow new no-such-file.yaml",
    ],
    ["standard input as the file", [ground, "--into", "-"], "--into takes the name"],
  ])("ends with 2 for %s", async (_, words, said) => {
    const { code, out, err } = await gauge(words);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain(said);
  });

  test("says which line of the answers is wrong", async () => {
    const { code, err } = await gauge([], `${ground}\n60 rows\n`);
    expect(code).toBe(2);
    expect(err).toContain("Line 2 of the answers");
  });
});
