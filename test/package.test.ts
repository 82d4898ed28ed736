import { execFileSync, spawnSync } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openSession } from "./support/terminal-session.ts";

/** The program as it is packed, unpacked again, with the packages it asks for and no others. */
let folder = "";
let packed: {
  readonly filename: string;
  readonly size: number;
  readonly files: readonly { readonly path: string }[];
};
const inPackage = (name: string): string => join(folder, "package", name);

interface Manifest {
  readonly files: readonly string[];
  readonly scripts: Readonly<Record<string, string>>;
  readonly bin: Readonly<Record<string, string>>;
  readonly man: readonly string[];
  readonly dependencies: Readonly<Record<string, string>>;
  readonly optionalDependencies: Readonly<Record<string, string>>;
}
const manifest: Manifest = JSON.parse(readFileSync("package.json", "utf8"));

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "evenrow-package-"));
  const source = join(folder, "source");
  // Left by an earlier build, whose parts had other names.
  mkdirSync(join(source, "dist/parts"), { recursive: true });
  writeFileSync(join(source, "dist/parts/earlier.js"), "");
  const [node, ...words] = manifest.scripts.prepare!.split(" ");
  expect(node).toBe("node");
  execFileSync(process.execPath, [...words, `--into=${join(source, "dist")}`]);
  for (const name of ["package.json", ...manifest.files])
    if (name !== "dist") cpSync(name, join(source, name), { recursive: true });
  const told = execFileSync(
    "npm",
    ["pack", "--json", "--ignore-scripts", "--offline", "--pack-destination", folder],
    { cwd: source, encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] },
  );
  [packed] = JSON.parse(told);
  execFileSync("tar", ["-xzf", join(folder, packed.filename), "-C", folder]);
  for (const name of [manifest.dependencies, manifest.optionalDependencies].flatMap(Object.keys)) {
    const link = inPackage(`node_modules/${name}`);
    mkdirSync(dirname(link), { recursive: true });
    symlinkSync(resolve("node_modules", name), link);
  }
});
afterAll(() => rmSync(folder, { recursive: true }));

const evenrow = (...words: readonly string[]) =>
  spawnSync(process.execPath, [inPackage(manifest.bin.evenrow!), ...words], {
    cwd: inPackage(""),
    encoding: "utf8",
    env: { ...process.env, XDG_STATE_HOME: join(folder, "state") },
  });

describe("the package", () => {
  test("is small, and holds what is run and read and nothing that it is made of", () => {
    const paths = packed.files.map(({ path }) => path);
    expect(packed.size).toBeLessThan(2_000_000);
    for (const path of [
      "README.md",
      "LICENSE",
      "CHANGELOG.md",
      "dist/LICENSES.txt",
      ...readdirSync(join(folder, "source/dist"))
        .filter((name) => /-worker\.c?js$/.test(name))
        .map((name) => `dist/${name}`),
      "samples/sleeve.yaml",
      "samples/motifs/braid.yaml",
      ...manifest.man,
      manifest.bin.evenrow,
    ])
      expect(paths).toContain(path);
    expect(paths).not.toContain("dist/parts/earlier.js");
    expect(paths.filter((path) => /\.tsx?$|^(src|solver|tui|test|node_modules)\//.test(path))).toEqual([]);
  });

  test("has every file and picture that its README names", () => {
    const paths = new Set(packed.files.map(({ path }) => path));
    const named = [...readFileSync("README.md", "utf8").matchAll(/\]\((samples\/[^)]+)\)/g)];
    expect(named.length).toBeGreaterThan(20);
    for (const [, path] of named) expect(paths).toContain(path);
  });

  test("carries the licence of every package that is bundled into it", () => {
    const licences = readFileSync(inPackage("dist/LICENSES.txt"), "utf8");
    for (const name of ["ink", "mathjs", "react", "yaml", "zod", "javascript-lp-solver"])
      expect(licences).toMatch(new RegExp(`^${name} \\d+\\.\\d+\\.\\d+ \\(`, "m"));
  });
});

describe("the packed program", () => {
  test("fits its own sample, in the engine's worker", () => {
    const { status, stdout } = evenrow("fit", "samples/sleeve.yaml");
    expect([status, stdout.includes("8 repeats, row 23 to row 91")]).toEqual([0, true]);
  });

  test("says where its samples are, out of another folder", () => {
    const { status, stderr } = spawnSync(
      process.execPath,
      [inPackage(manifest.bin.evenrow!), "fit", "samples/sleeve.yaml"],
      { cwd: folder, encoding: "utf8" },
    );
    expect([status, stderr]).toEqual([2, expect.stringContaining(inPackage("samples/sleeve.yaml"))]);
  });

  test("draws a chart as a picture and prints a sheet", () => {
    expect(evenrow("chart", "samples/sleeve.yaml", "-o", "sleeve.png")).toMatchObject({ status: 0 });
    expect([...readFileSync(inPackage("sleeve.png")).subarray(0, 4)]).toEqual([0x89, 0x50, 0x4e, 0x47]);
    expect(evenrow("sheet", "samples/sleeve.yaml", "-o", "sleeve.pdf")).toMatchObject({ status: 0 });
    expect(readFileSync(inPackage("sleeve.pdf"), "latin1").startsWith("%PDF-")).toBe(true);
    expect(statSync(inPackage("sleeve.pdf")).size).toBeGreaterThan(10_000);
  });

  test("opens its screen, solves there in a worker of its own, and gives the terminal back", async () => {
    const session = openSession(
      [process.execPath, inPackage(manifest.bin.evenrow!), "explore", inPackage("samples/sleeve.yaml")],
      { columns: 120, rows: 40, environment: { XDG_STATE_HOME: join(folder, "state") } },
    );
    await session.shows(/1\.637/);
    session.send("q");
    expect(await session.exited).toBe(0);
    expect(session.isAlternate()).toBe(false);
  });

  test("measures on the way in the third of its workers", async () => {
    const session = openSession(
      [process.execPath, inPackage(manifest.bin.evenrow!), "work", inPackage("samples/sleeve.yaml")],
      { columns: 120, rows: 40, environment: { XDG_STATE_HOME: join(folder, "state") } },
    );
    await session.shows("sleeve");
    session.send("50\r");
    await session.shows(/row 50/);
    session.send("y");
    session.send("m");
    await session.shows(/length/);
    session.send("17 cm\r");
    session.send("\r");
    await session.shows(/r +fit the rest anew|r fit/);
    session.send("k");
    session.send("q");
    expect(await session.exited).toBe(0);
  });

  test("fits without the packages that are optional, and says what a PNG would take", () => {
    for (const name of Object.keys(manifest.optionalDependencies)) rmSync(inPackage(`node_modules/${name}`));
    expect(evenrow("fit", "samples/scarf.yaml")).toMatchObject({ status: 0 });
    const { status, stderr } = evenrow("chart", "samples/sleeve.yaml", "-o", "again.png");
    expect([status, stderr]).toEqual([2, expect.stringContaining("What draws PNGs is not installed")]);
    expect(existsSync(inPackage("again.png"))).toBe(false);
  });
});
