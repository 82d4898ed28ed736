import { spawnSync } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { build } from "esbuild";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

/** A house of a few files, with the rules of this one, in which something is wrong on purpose. */
let house: string;

const plant = (file: string, text: string): void => {
  mkdirSync(join(house, dirname(file)), { recursive: true });
  writeFileSync(join(house, file), text);
};

beforeAll(() => {
  house = mkdtempSync(join(tmpdir(), "evenrow-house-"));
  for (const file of ["biome.json", "house.biome.json", "knip.json", "tsconfig.json", ".gitignore"])
    cpSync(file, join(house, file));
  symlinkSync(resolve("node_modules"), join(house, "node_modules"));
});

afterAll(() => rmSync(house, { recursive: true, force: true }));

/** What is planted, where, and the rule that has to find it there; none where it is allowed. */
const imports: readonly (readonly [file: string, text: string, rule: string | undefined])[] = [
  ["solver/upward.ts", 'import "../src/fit/fit.ts";', "noRestrictedImports"],
  ["solver/engine-lane.ts", 'import "../src/fit/fit.ts";', "noRestrictedImports"],
  ["solver/reads.ts", 'import "node:fs";', "noRestrictedImports"],
  ["solver/worker-url.ts", 'import "node:fs";', undefined],
  [
    "src/fit/upward.ts",
    'import type { State } from "../../tui/state.ts";\nexport type Mine = State;',
    "noRestrictedImports",
  ],
  ["src/fit/later.ts", 'export const later = () => import("../../tui/run.tsx");', "noRestrictedImports"],
  ["src/fit/commands.ts", 'export { runCommandLine } from "../cli/run.ts";', "noRestrictedImports"],
  ["src/fit/engine.ts", 'import "highs";', "noRestrictedImports"],
  ["src/fit/reads.ts", 'import "node:fs/promises";', "noRestrictedImports"],
  ["src/fit/starts.ts", 'import "child_process";', "useNodejsImportProtocol"],
  ["src/fit/says.ts", 'console.log("said");', "noRestrictedGlobals"],
  ["src/fit/asks.ts", "export const home = process.env.HOME;", "noRestrictedGlobals"],
  ["src/fit/names.ts", 'import "node:path";', undefined],
  ["src/state/reads.ts", 'import "node:fs";', undefined],
  ["src/state/upward.ts", 'import "../../tui/state.ts";', "noRestrictedImports"],
  ["src/cli/commands/fit.ts", 'import "../../../tui/run.tsx";', "noRestrictedImports"],
  ["src/cli/commands/work.ts", 'import "../../../tui/work/state.ts";', "noRestrictedImports"],
  ["src/cli/commands/explore.ts", 'export const screen = () => import("../../../tui/run.tsx");', undefined],
  ["tui/update/reads.ts", 'import "node:fs";', "noRestrictedImports"],
  ["tui/run/reads.ts", 'import "node:fs";', undefined],
  ["tui/run/tested.ts", 'import "../../test/support/run-garment.ts";', "noRestrictedImports"],
  ["src/cli/tested.ts", 'import "../../test/support/run-garment.ts";', "noRestrictedImports"],
  ["solver/tested.ts", 'import "../test/support/run-garment.ts";', "noRestrictedImports"],
  ["src/circle/one.ts", 'import { other } from "./other.ts";\nexport const one = other;', "noImportCycles"],
  ["src/circle/other.ts", 'import { one } from "./one.ts";\nexport const other = one;', "noImportCycles"],
  [
    "src/circle/type.ts",
    'import type { Back } from "./back.ts";\nexport type There = Back;',
    "noImportCycles",
  ],
  [
    "src/circle/back.ts",
    'import type { There } from "./type.ts";\nexport type Back = There;',
    "noImportCycles",
  ],
];

interface Finding {
  readonly category: string;
  readonly location: { readonly path: string };
}

describe("imports", () => {
  let findings: readonly Finding[];

  beforeAll(() => {
    for (const [file, text] of imports) plant(file, `${text}\n`);
    const { stdout } = spawnSync(
      resolve("node_modules/.bin/biome"),
      ["lint", "--reporter=json", "--max-diagnostics=none", "."],
      { cwd: house, encoding: "utf8" },
    );
    findings = JSON.parse(stdout).diagnostics;
  });

  it.each(imports)("%s: %s", (file, _, rule) => {
    const found = findings.filter(({ location }) => location.path === file);
    expect(found.map(({ category }) => category.split("/").at(-1))).toEqual(rule ? [rule] : []);
  });

  it("are excepted only in files that there are", () => {
    const { overrides } = JSON.parse(readFileSync("house.biome.json", "utf8"));
    const patterns: readonly string[] = overrides.flatMap(({ includes }: { includes: string[] }) => includes);
    for (const pattern of patterns) {
      const place = pattern.replace(/^!/, "").replace(/\/\*.*$/, "");
      expect(existsSync(place), pattern).toBe(true);
    }
  });

  it("load the screen only when a command asks for it, and before that next to nothing", async () => {
    const { metafile } = await build({
      entryPoints: ["src/cli/main.ts"],
      bundle: true,
      write: false,
      metafile: true,
      platform: "node",
      format: "esm",
      packages: "external",
    });
    const upward = Object.entries(metafile.inputs)
      .filter(([file]) => !file.startsWith("tui/"))
      .flatMap(([file, { imports }]) =>
        imports.filter(({ path }) => path.startsWith("tui/")).map(({ kind }) => ({ file, kind })),
      );
    expect(upward).toEqual([
      { file: "src/cli/commands/explore.ts", kind: "dynamic-import" },
      { file: "src/cli/commands/work.ts", kind: "dynamic-import" },
    ]);
    const first = new Set<string>();
    const packages = new Set<string>();
    const follow = (file: string): void => {
      if (first.has(file)) return;
      first.add(file);
      for (const { path, kind, external } of metafile.inputs[file]!.imports)
        if (kind === "import-statement") external ? packages.add(path) : follow(path);
    };
    follow("src/cli/main.ts");
    expect([...packages].filter((name) => !name.startsWith("node:"))).toEqual(["fastest-levenshtein"]);
  });
});

describe("what nobody uses", () => {
  interface Issues {
    readonly file: string;
    readonly [kind: string]: unknown;
  }
  let issues: readonly Issues[];

  const namesOf = (file: string, kind: string): readonly string[] => {
    const found = issues.find((one) => one.file === file)?.[kind] as readonly { name: string }[] | undefined;
    return (found ?? []).map(({ name }) => name);
  };

  beforeAll(() => {
    rmSync(join(house, "src"), { recursive: true });
    plant(
      "package.json",
      JSON.stringify({ name: "house", type: "module", dependencies: { yaml: "*", zod: "*" } }),
    );
    plant(
      "src/cli/main.ts",
      'import "yaml";\nimport "highs";\nimport { used } from "../used.ts";\nused();\n',
    );
    plant(
      "src/used.ts",
      "export const used = () => onlyHere;\nconst shape: Shape = 1;\nexport const onlyHere = shape;\nexport type Shape = number;\n",
    );
    plant("src/unused.ts", "export const unused = 1;\n");
    const { stdout } = spawnSync(resolve("node_modules/.bin/knip"), ["--reporter", "json"], {
      cwd: house,
      encoding: "utf8",
    });
    issues = JSON.parse(stdout).issues;
  });

  it("is found: an export that only its own file uses, of values and of types", () => {
    expect(namesOf("src/used.ts", "exports")).toEqual(["onlyHere"]);
    expect(namesOf("src/used.ts", "types")).toEqual(["Shape"]);
  });

  it("is found: a file that nobody imports", () => {
    expect(namesOf("src/unused.ts", "files")).toHaveLength(1);
  });

  it("is found: a package that nobody imports, and one that is not asked for", () => {
    expect(namesOf("package.json", "dependencies")).toEqual(["zod"]);
    expect(namesOf("src/cli/main.ts", "unlisted")).toEqual(["highs"]);
  });
});
