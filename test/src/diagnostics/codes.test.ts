import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { CODES } from "../../../src/diagnostics/codes.ts";

const SOURCES = readdirSync("src", { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".ts") && !name.endsWith("codes.ts"))
  .map((name) => readFileSync(`src/${name}`, "utf8"))
  .join("\n");

describe("the table of mistakes", () => {
  it("has a sentence for each, and each is used", () => {
    for (const [code, meaning] of Object.entries(CODES)) {
      expect(meaning).toMatch(/^[A-Z].*\.$/);
      expect(SOURCES).toContain(`"${code}"`);
    }
  });

  it("has every code that a part of the program gives out", () => {
    const given = [...SOURCES.matchAll(/\bcode: "([a-z0-9-]+)"/g)].map(([, code]) => code);
    expect(given.length).toBeGreaterThan(40);
    for (const code of given) expect(Object.keys(CODES)).toContain(code);
  });
});
