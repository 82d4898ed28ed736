import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { run } from "../../../../src/cli/commands/why.ts";
import { setValue } from "../../../../src/edit/set-value.ts";
import { readSource } from "../../../../src/explore/read-source.ts";
import { rulesOf } from "../../../../src/fit/refusal/rules-of.ts";
import { placedRules } from "../../../../src/report/fit-json.ts";
import { whyText } from "../../../../src/why/why-text.ts";
import { fitHere, soundGarment } from "../../../support/run-garment.ts";
import { fitsOf, stripFile } from "../../../support/two-sizes.ts";

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

describe("a file with sizes is asked about as a whole", () => {
  const folder = mkdtempSync(join(tmpdir(), "why-sizes-"));
  afterAll(() => rmSync(folder, { recursive: true }));
  const whyOf = (text: string, options: Record<string, string | boolean> = {}) => {
    const file = join(folder, "strip.yaml");
    writeFileSync(file, text);
    return why(file, options);
  };
  const whole = ["interval", "spread", "pickup"];
  const withSets = (text: string, set: { path: string[]; to: string }[]): string =>
    set.reduce((before, { path, to }) => setValue(before, path, to), text);

  test("of each that does not fit by itself, what is in its way and what would let it fit", async () => {
    const text = stripFile({ rows: { S: 28, M: 8, L: 33, XL: 5 }, share: whole });
    const { code, out } = await whyOf(text);
    expect(code).toBe(1);
    expect(out).toContain("M and XL do not fit, even without the others.");
    const [, ofM, ofXl] = out.split(/\n(?:M|XL)\n/);
    for (const one of [ofM, ofXl]) expect(one).toMatch(/^Nothing fits[\s\S]*instead of 3 or 4/);
    const told = JSON.parse((await whyOf(text, { json: true })).out);
    expect(told).toMatchObject({ status: "does not fit", complete: true, conflict: [], changes: [] });
    expect(told.sizes.map(({ size }: { size: string }) => size)).toEqual(["M", "XL"]);
    for (const { size, conflict, changes } of told.sizes) {
      expect(conflict.length).toBeGreaterThan(0);
      expect(changes.length).toBeGreaterThan(0);
      for (const { set } of changes) {
        const { garment } = readSource(withSets(text, set), "strip.yaml", { size });
        expect((await fitHere(garment!, { rivals: 0 })).status).toBe("fits");
      }
    }
  });

  test("of a size, its own keys by their lines", async () => {
    const text = stripFile({
      rows: { S: 28, M: 30 },
      more: {
        place: [
          { motif: "plait", on: "strip", margins: { bottom: "0..1", top: "0..1", side: { least: 2 } } },
        ],
      },
    }).replace(/(- height: 30 mm\n +width: 40 mm\n)/, "$1        grow: 0 mm\n");
    const told = JSON.parse((await whyOf(text.replaceAll("30 mm", "8 mm"), { json: true })).out);
    const grow = told.sizes[0].conflict.find(({ rule }: { rule: string }) => rule.endsWith("grow"));
    expect(grow.rule).toBe("sizes.M.pieces.strip.grow");
    expect(text.split("\n")[grow.line - 1]).toContain("grow");
  });

  test("where they do not fit together, what to leave out of what they share", async () => {
    // 36 rows take interval 4 alone, 33 and 27 interval 3 alone.
    const text = stripFile({ rows: { S: 33, M: 36, L: 27 }, share: whole });
    const { code, out } = await whyOf(text);
    expect(code).toBe(1);
    expect(out).toContain("Without M the others could.");
    expect(out).toContain("This would let every size fit (line 71):\n  - leave interval out of share");
    const told = JSON.parse((await whyOf(text, { json: true })).out);
    expect(told.changes.map(({ words }: { words: string }) => words)).toEqual([
      "leave interval out of share",
    ]);
    await fitsOf(withSets(text, told.changes[0].set));
    // One of them alone is kept from fitting by the others.
    expect((await whyOf(text, { size: "M" })).out).toBe(out);
  });

  test("where they fit, the rules that bind those that give up most, and how to ask of the others", async () => {
    const text = stripFile({ rows: { S: 28, M: 33, L: 27, XL: 34 }, share: whole });
    const { code, out } = await whyOf(text);
    expect(code).toBe(0);
    expect(out).toContain("Every size fits. Of those that give up most:");
    const told = JSON.parse((await whyOf(text, { json: true })).out);
    expect(told.sizes).toHaveLength(3);
    expect(told.not_asked).toHaveLength(1);
    expect(out).toContain(`For ${told.not_asked[0]}: --size NAME`);
    const { sizes } = await fitsOf(text);
    const left = sizes.find(({ name }) => name === told.not_asked[0])!;
    for (const { fit } of sizes) expect(fit.cost).toBeGreaterThan(left.fit.cost - 1e-6);
  });
});
