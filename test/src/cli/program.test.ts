import { execFile } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { toProgram } from "../../../solver/choice.ts";
import { highsEngine } from "../../../solver/highs-engine.ts";
import { enumerate } from "../../../src/fit/enumerate.ts";
import { formulate } from "../../../src/fit/formulate.ts";
import { knit, type SheetPiece } from "../../support/bed-simulator.ts";
import { soundGarment } from "../../support/run-garment.ts";

const folder = mkdtempSync(join(tmpdir(), "evenrow-"));
afterAll(() => rmSync(folder, { recursive: true }));

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the built program as a shell would, with nothing on standard input unless it is given. */
function evenrow(words: readonly string[], input = ""): Promise<Ended> {
  return new Promise((resolve) => {
    const child = execFile(process.execPath, ["dist/evenrow.js", ...words], (error, out, err) => {
      resolve({ code: error ? Number(error.code) : 0, out, err });
    });
    child.stdin?.end(input);
  });
}

const samples = ["sleeve", "front", "cable-sleeve", "scarf", "drawn-front", "sized-pullover", "hat"];

describe("fit", () => {
  test.each(samples)("fits the sample %s", async (name) => {
    const { code, out } = await evenrow(["fit", `samples/${name}.yaml`, "--json"]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ format: "evenrow-fit/1", status: "fits", proven: true });
  });

  test("ends with 1 and names the rules where nothing fits", async () => {
    const { code, out } = await evenrow(["fit", "samples/too-narrow.yaml"]);
    expect(code).toBe(1);
    expect(out).toContain("spread 6 to 9 needles (line 17)");
    expect(out).toContain("at least 5 needles at each side (line 21)");
  });

  test("tells cautions about cords on standard error, and the fit alone on standard output", async () => {
    const { out, err } = await evenrow(["fit", "samples/sleeve.yaml"]);
    expect(out).toContain("8 repeats, row 23 to row 91");
    expect(err).toContain("EN 14682");
  });

  test("reads standard input", async () => {
    const { code, out } = await evenrow(["fit", "-"], readFileSync("samples/sleeve.yaml", "utf8"));
    expect([code, out.includes("cord: make 194 cord stitches")]).toEqual([0, true]);
  });
});

describe("sheet", () => {
  test.each(samples)("of the sample %s can be knitted from its JSON", async (name) => {
    const { code, out } = await evenrow(["sheet", `samples/${name}.yaml`, "--json"]);
    expect(code).toBe(0);
    const sheet = JSON.parse(out) as { format: string; pieces: SheetPiece[] };
    expect(sheet.format).toBe("evenrow-sheet/1");
    for (const piece of sheet.pieces) expect(knit(piece).violations).toEqual([]);
  });

  test("says rows, carriage, counts, ends and the cord's preparation", async () => {
    const { out } = await evenrow(["sheet", "samples/sleeve.yaml"]);
    for (const words of [
      "194 cord stitches = 388 passes",
      "cast on L22 to R22",
      "knit 5 rows, to row 5, carriage left",
      "hang the middle of the folded cord",
      "left: count 3, hang both legs on L3",
      "right: count 5, hang both legs on L3",
      "unravel the spare cord",
      "cut the spare cord two rounds beyond",
      "bind off all stitches, L34 to R34",
    ])
      expect(out.replace(/\s+/g, " ")).toContain(words);
    for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  test("is written to a file only where none is, unless forced", async () => {
    const file = join(folder, "sheet.txt");
    expect((await evenrow(["sheet", "samples/sleeve.yaml", "-o", file])).code).toBe(0);
    const again = await evenrow(["sheet", "samples/sleeve.yaml", "-o", file]);
    expect(again.code).toBe(2);
    expect(again.err).toContain("--force");
    expect((await evenrow(["sheet", "samples/sleeve.yaml", "-o", file, "--force"])).code).toBe(0);
  });
});

describe("model", () => {
  test("writes a program of the same optimum", async () => {
    const { code, out } = await evenrow(["model", "samples/sleeve.yaml"]);
    expect(code).toBe(0);
    expect(out).toMatch(/minimi[sz]e/i);
    const garment = soundGarment(readFileSync("samples/sleeve.yaml", "utf8"));
    const outcome = await highsEngine(toProgram(formulate(enumerate(garment))).program, {});
    expect(outcome.status === "optimal" && outcome.cost).toBeCloseTo(1.6365, 4);
  });
});

describe("check", () => {
  test("lists every mistake with its place, and ends with 2", async () => {
    const file = join(folder, "wrong.yaml");
    const text = readFileSync("samples/sleeve.yaml", "utf8")
      .replace("interval: { allow", "intervall: { allow")
      .replace("width: 20 cm", "width: 20")
      .replace("on: sleeve", "on: sleve");
    writeFileSync(file, text);
    const { code, out } = await evenrow(["check", file]);
    expect(code).toBe(2);
    expect(out).toMatch(/wrong\.yaml:14:32 error/);
    expect(out).toMatch(/interval \(the nearest known key\)/);
    expect(out).toMatch(/sleeve \(the nearest known name\)/);
    expect(out).not.toMatch(/\bat .*\.js:/);
  });

  test("tells what only shows once the piece is counted", async () => {
    const file = join(folder, "wide.yaml");
    writeFileSync(file, readFileSync("samples/sleeve.yaml", "utf8").replace("needles: 150", "needles: 60"));
    const { code, out } = await evenrow(["check", file]);
    expect(code).toBe(2);
    expect(out).toMatch(/wide\.yaml:15:9 error: sleeve is wider here than the bed: it needs 68 needles/);
  });

  test("finds nothing wrong with the samples", async () => {
    for (const name of [...samples, "too-narrow"])
      expect((await evenrow(["check", `samples/${name}.yaml`])).code).toBe(0);
  });
});

describe("the command line", () => {
  test.each([
    [["--version"], 0],
    [["--help"], 0],
    [["fit", "--help"], 0],
    [["fitt", "samples/sleeve.yaml"], 2],
    [["fit", "samples/sleeve.yaml", "--jsn"], 2],
    [["fit"], 2],
    [["fit", "samples"], 2],
    [["fit", "no-such-file.yaml"], 2],
    [["fit", "samples/sleeve.yaml", "--rivals", "many"], 2],
  ])("%j ends with %i", async (words, code) => {
    const ended = await evenrow(words);
    expect(ended.code).toBe(code);
    expect(ended.out + ended.err).not.toMatch(/\n\s+at /);
    if (code === 2) expect(ended.err).not.toBe("");
  });

  test("guesses what a misspelt command or option was meant to be", async () => {
    expect((await evenrow(["fitt", "x"])).err).toContain("evenrow fit");
    expect((await evenrow(["fit", "x", "--jsn"])).err).toContain("--json");
  });
});
