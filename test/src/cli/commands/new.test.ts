import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openSession } from "../../../support/terminal-session.ts";

const program = resolve("dist/evenrow.js");

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "evenrow-new-"));
});

afterEach(() => rm(folder, { recursive: true, force: true }));

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the built program in the folder of the test, with lines on standard input and no terminal. */
function evenrow(words: readonly string[], lines: readonly string[] = []): Promise<Ended> {
  return new Promise((done) => {
    const child = execFile(process.execPath, [program, ...words], { cwd: folder }, (error, out, err) => {
      done({ code: error ? Number(error.code) : 0, out, err });
    });
    child.stdin?.end(lines.map((line) => `${line}\n`).join(""));
  });
}

const enters = (count: number): readonly string[] => Array.from({ length: count }, () => "");

const file = (name: string): Promise<string> => readFile(join(folder, name), "utf8");

describe("evenrow new without a terminal", () => {
  it("writes what is suggested to standard output, and it fits", async () => {
    const { code, out } = await evenrow(["new", "--defaults"]);
    expect(code).toBe(0);
    await writeFile(join(folder, "first.yaml"), out);
    const fit = await evenrow(["fit", "first.yaml", "--json"]);
    expect(JSON.parse(fit.out)).toMatchObject({ status: "fits" });
  });

  it("takes one answer a line, with back and ? as on a terminal, and says what to do next", async () => {
    const lines = ["Blue front", "28", "40", "back", "?", "39.5", ...enters(9), "front", ...enters(14)];
    const { code, out, err } = await evenrow(["new", "front.yaml"], lines);
    expect([code, out]).toEqual([0, ""]);
    expect(err).toContain("Wrote front.yaml.");
    expect(err).toContain("evenrow fit front.yaml");
    const text = await file("front.yaml");
    expect(text).toContain("title: Blue front\n");
    expect(text).toContain("rows: 39.5");
    expect(text).toContain("neck:");
    const check = await evenrow(["check", "front.yaml"]);
    expect([check.code, check.err]).toEqual([0, "front.yaml reads well.\n"]);
  });

  it("takes the last answer, the yarn, where there is one", async () => {
    const lines = ["Blue front", ...enters(11), "front", ...enters(12)];
    const without = await evenrow(["new"], lines);
    expect([without.code, without.out.includes("yarn:")]).toEqual([0, false]);
    const { out } = await evenrow(["new"], [...lines, "50 g = 135 m"]);
    expect(out).toContain("yarn: { ground: { tex: 370 } }");
  });

  it("names the line and the question of a wrong answer, and writes nothing", async () => {
    const { code, err } = await evenrow(["new", "a.yaml"], ["a", "28,5"]);
    expect(code).toBe(2);
    expect(err).toContain('Line 2 of the answers, "How many stitches did you count on your swatch?"');
    expect(err).toContain("Right would be: 28.5");
    await expect(file("a.yaml")).rejects.toThrow("ENOENT");
  });

  it("says where the answers end too early", async () => {
    const { code, err } = await evenrow(["new"], ["a", ""]);
    expect(code).toBe(2);
    expect(err).toContain('end before "And how many rows, over the same length or another?"');
  });

  it("leaves a file that exists as it is, unless told to overwrite it", async () => {
    await writeFile(join(folder, "a.yaml"), "mine");
    const refused = await evenrow(["new", "a.yaml", "--defaults"]);
    expect(refused.code).toBe(2);
    expect(refused.err).toContain("--force");
    expect(await file("a.yaml")).toBe("mine");
    expect((await evenrow(["new", "a.yaml", "--defaults", "--force"])).code).toBe(0);
    expect(await file("a.yaml")).toContain("format: evenrow/1");
  });

  it("takes one file", async () => {
    expect((await evenrow(["new", "a.yaml", "b.yaml"])).code).toBe(2);
  });
});

describe("evenrow new on a terminal", () => {
  const ask = (words = "") =>
    openSession(["sh", "-c", `cd '${folder}' && exec ${process.execPath} ${program} new ${words}`]);

  it("asks, draws, and writes into the file that is named last", async () => {
    const session = ask();
    await session.shows("[My garment]");
    session.send("Red scarf\r");
    await session.shows("2 of 26");
    session.send("28,5\r");
    await session.shows("Right would be: 28.5");
    session.send("back\r");
    await session.shows("[Red scarf]");
    session.send("\r".repeat(12));
    await session.shows("Which piece does it lie on?");
    session.send("scarf\r\r\r\r");
    await session.shows("bind-off, 50 cm");
    session.send("\r".repeat(8));
    await session.shows("[red-scarf.yaml]");
    session.send("no/such/folder.yaml\r");
    await session.shows("there is no such file or folder");
    session.send("\r");
    expect(await session.exited).toBe(0);
    expect(session.output()).toContain("Wrote red-scarf.yaml.");
    expect(await file("red-scarf.yaml")).toContain("title: Red scarf\n");
  });

  it.each([
    ["quit", "quit\r"],
    ["Ctrl-C", "\u0003"],
    ["Ctrl-D", "\u0004"],
  ])("writes nothing after %s", async (_, keys) => {
    const session = ask("a.yaml");
    await session.shows("[My garment]");
    session.send(keys);
    expect(await session.exited).toBe(2);
    expect(session.output()).toContain("Stopped; nothing was written.");
    await expect(file("a.yaml")).rejects.toThrow("ENOENT");
  });
});
