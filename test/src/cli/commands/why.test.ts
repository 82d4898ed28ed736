import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { run } from "../../../../src/cli/commands/why.ts";
import { setValue } from "../../../../src/edit/set-value.ts";
import { readSource } from "../../../../src/explore/read-source.ts";
import { rulesOf } from "../../../../src/fit/refusal/rules-of.ts";
import { placedRules } from "../../../../src/report/fit-json.ts";
import { whyText } from "../../../../src/why/why-text.ts";
import { fitHere, soundGarment } from "../../../support/run-garment.ts";

async function why(file: string, options: Record<string, string | boolean> = {}) {
  let out = "";
  const code = await run({
    operands: [file],
    options,
    terminal: {
      out: (text) => {
        out += text;
      },
      say: () => {},
      columns: 80,
      interactive: false,
      readStdin: async () => new Uint8Array(),
    },
  });
  return { code, out };
}

describe("a cuff that nothing fits", () => {
  const file = "samples/too-narrow.yaml";

  test("says what stands in the way, by line, and changes that each make the file fit", async () => {
    const { code, out } = await why(file, { json: true });
    expect(code).toBe(1);
    const told = JSON.parse(out);
    expect(told).toMatchObject({ format: "evenrow-why/1", status: "does not fit", complete: true });
    const source = readFileSync(file, "utf8");
    const spread = told.conflict.find(({ rule }: { rule: string }) => rule.endsWith("spread"));
    expect(source.split("\n")[spread.line - 1]).toContain("spread");
    expect(told.changes.length).toBeGreaterThan(0);
    for (const { set } of told.changes) {
      const changed = set.reduce(
        (text: string, { path, to }: { path: string[]; to: string }) => setValue(text, path, to),
        source,
      );
      expect((await fitHere(soundGarment(changed), { rivals: 0 })).status).toBe("fits");
    }
    const costs = told.changes.map(({ cost }: { cost: number }) => cost);
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
  });

  test("says the same in words", async () => {
    const { code, out } = await why(file);
    expect(code).toBe(1);
    expect(out).toContain("would let it fit");
    expect(out).toMatch(/\(line \d+\)/);
  });
});

test("a time limit that ends it at once gives exit code 3, whatever was found", async () => {
  const ended = why("samples/too-narrow.yaml", { "time-limit": "0.01" }).then(
    ({ code }) => code,
    (error: { code?: number }) => error.code,
  );
  expect(await ended).toBe(3);
});

test("what an asking that was ended has left is told, rule by rule", () => {
  const source = readFileSync("samples/too-narrow.yaml", "utf8");
  const { garment, locate } = readSource(source, "too-narrow.yaml");
  const conflict = placedRules(rulesOf(garment!).slice(0, 3), locate);
  const told = whyText(
    "Cuff",
    { status: "does not fit", conflict, smallest: false, changes: [], unhelpful: [], complete: false },
    80,
  );
  expect(told).toContain("- the bed has 150 needles (line 4)");
  expect(told.replaceAll(/\s+/g, " ")).toContain(
    "They are among these, some of which may have nothing to do with it:",
  );
  expect(told).toContain("--time-limit");
});

test("a scarf that fits says which rules bind, and what a step of each comes to", async () => {
  const { code, out } = await why("samples/scarf.yaml", { json: true });
  expect(code).toBe(0);
  const told = JSON.parse(out);
  expect(told).toMatchObject({ status: "fits", conflict: [], changes: [] });
  expect(told.binding.length).toBeGreaterThan(0);
});
