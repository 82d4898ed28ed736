import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { commandTable } from "../../../src/cli/command-table.ts";
import { commandsPage } from "../../../src/cli/manual/commands-page.ts";
import { garmentPage } from "../../../src/cli/manual/garment-page.ts";
import { SECTIONS } from "../../../src/garment/keys.ts";

const sample = readFileSync("samples/sleeve.yaml", "utf8");
const pages = [
  { name: "evenrow.1", text: commandsPage(commandTable, "0.0.0") },
  { name: "evenrow-garment.5", text: garmentPage(sample, "0.0.0") },
];

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "evenrow-manual-"));
  for (const { name, text } of pages) writeFileSync(join(folder, name), text);
});
afterAll(() => rmSync(folder, { recursive: true }));

const isThere = (program: string): boolean => spawnSync(program, ["--version"]).error === undefined;

const named = (program: string): string =>
  `${program}${isThere(program) ? "" : " (skipped: it is not installed here)"}`;

describe.skipIf(!isThere("man"))(named("man"), () => {
  const set = (name: string) =>
    spawnSync("man", ["--warnings", "--no-hyphenation", "--no-justification", "-l", join(folder, name)], {
      encoding: "utf8",
      env: { ...process.env, MANWIDTH: "200", MANPAGER: "cat", LC_ALL: "C.UTF-8" },
    });
  const read = (name: string): string => plain(set(name).stdout);
  const plain = (text: string): string => text.replace(/\s+/g, " ").trim();

  test.each(pages)("sets $name without a warning", ({ name }) => {
    expect(set(name)).toMatchObject({ status: 0, stderr: "" });
  });

  test("shows every command, option, summary and example as it is typed", () => {
    const page = read("evenrow.1");
    for (const { name, operands, options, examples } of commandTable) {
      expect(page).toContain(plain(`evenrow ${name} ${operands}`));
      for (const { name: option, value = "", summary } of options)
        expect(page).toContain(plain(`--${option} ${value} ${summary}`));
      for (const example of examples) expect(page).toContain(plain(example));
    }
  });

  test("shows every key of the garment file, and a garment line by line", () => {
    const page = read("evenrow-garment.5");
    for (const { where, keys } of Object.values(SECTIONS)) {
      expect(page).toContain(plain(where.slice(1)));
      for (const [key, { means, form }] of Object.entries(keys))
        expect(page).toContain(plain(`${key} ${means}: ${form}`));
    }
    for (const line of sample.split("\n")) expect(page).toContain(plain(line));
  });
});

describe.skipIf(!isThere("mandoc"))(named("mandoc"), () => {
  test.each(pages)("finds nothing but style in $name, and no date", ({ name }) => {
    const { stdout } = spawnSync("mandoc", ["-T", "lint", join(folder, name)], { encoding: "utf8" });
    const findings = stdout.split("\n").filter((line) => line !== "" && !line.includes(": STYLE: "));
    expect(findings).toEqual([expect.stringContaining("missing date")]);
  });
});

test("no line is taken for a request to the setter, and no letter for an escape", () => {
  const option = { name: "y", summary: "'quoted\\nfirst" };
  const command = { name: "x", summary: ".start", operands: "", examples: [], load: () => Promise.reject() };
  const page = commandsPage([{ ...command, options: [option] }], "0");
  expect(page).toContain("\n\\&.start.\n");
  expect(page).toContain("\n\\&'quoted\\enfirst\n");
});
