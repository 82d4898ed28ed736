import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { commandTable } from "../../../src/cli/command-table.ts";
import { manPage } from "../../../src/cli/man-page.ts";

let folder = "";
let file = "";

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "evenrow-man-"));
  file = join(folder, "evenrow.1");
  writeFileSync(file, manPage(commandTable, "0.0.0"));
});
afterAll(() => rmSync(folder, { recursive: true }));

const isThere = (program: string): boolean => spawnSync(program, ["--version"]).error === undefined;

const named = (program: string): string =>
  `${program}${isThere(program) ? "" : " (skipped: it is not installed here)"}`;

describe.skipIf(!isThere("man"))(named("man"), () => {
  const set = () =>
    spawnSync("man", ["--warnings", "--no-hyphenation", "--no-justification", "-l", file], {
      encoding: "utf8",
      env: { ...process.env, MANWIDTH: "200", MANPAGER: "cat", LC_ALL: "C.UTF-8" },
    });

  test("sets the page without a warning", () => {
    expect(set()).toMatchObject({ status: 0, stderr: "" });
  });

  test("shows every command, option, summary and example as it is typed", () => {
    const page = set().stdout.replace(/\s+/g, " ");
    for (const { name, operands, options, examples } of commandTable) {
      expect(page).toContain(`evenrow ${name} ${operands}`);
      for (const { name: option, value, summary } of options)
        expect(page).toContain(`--${option} ${value === undefined ? "" : `${value} `}${summary}`);
      for (const example of examples) expect(page).toContain(example.replace(/\s+/g, " "));
    }
  });
});

describe.skipIf(!isThere("mandoc"))(named("mandoc"), () => {
  test("finds nothing but style, and no date, which would differ from build to build", () => {
    const { stdout } = spawnSync("mandoc", ["-T", "lint", file], { encoding: "utf8" });
    const findings = stdout.split("\n").filter((line) => line !== "" && !line.includes(": STYLE: "));
    expect(findings).toEqual([expect.stringContaining("missing date")]);
  });
});

test("no line is taken for a request to the setter, and no letter for an escape", () => {
  const summary = "'quoted\\nfirst";
  const page = manPage(
    [
      {
        name: "x",
        summary: ".start",
        operands: "",
        options: [{ name: "y", summary }],
        examples: [],
        load: () => Promise.reject(),
      },
    ],
    "0",
  );
  expect(page).toContain("\n\\&.start.\n");
  expect(page).toContain("\n\\&'quoted\\enfirst\n");
});
