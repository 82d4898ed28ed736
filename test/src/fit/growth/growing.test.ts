import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { examine } from "../../../../src/examine/examine.ts";
import { checkFit } from "../../../../src/fit/check.ts";
import type { Fit } from "../../../../src/fit/fit.ts";
import { readGarment } from "../../../../src/garment/read-garment.ts";
import { fitText } from "../../../../src/report/fit-text.ts";
import { garmentText, marked } from "../../../support/garment-text.ts";
import { fitHere, soundGarment } from "../../../support/run-garment.ts";

const sample = readFileSync("samples/growing-sleeve.yaml", "utf8");

async function grown(): Promise<Fit> {
  const result = await fitHere(soundGarment(sample), { rivals: 0 });
  if (result.status !== "fits") throw new Error(result.status);
  return result.fit;
}

describe("a motif that follows its piece", () => {
  test("is told section by section, the lead-in in the first only", async () => {
    const result = await fitHere(soundGarment(sample), { rivals: 1 });
    if (result.status !== "fits") throw new Error(result.status);
    const text = fitText(result, 80);
    expect(text.match(/lead-in/g)).toHaveLength(1);
    expect(text).toMatch(/spread \d+ for 1 repeat\n/);
    expect(text).toMatch(/join +count/);
  });

  test("is refused by the check where its spread jumps, or where its cost is told wrong", async () => {
    const fit = await grown();
    const [placement] = fit.placements;
    const [first, ...rest] = placement!.sections;
    expect(checkFit(fit.garment, fit, fit.cost)).toEqual([]);
    const skipping = { ...fit, placements: [{ ...placement!, sections: [first!, ...rest.slice(1)] }] };
    expect(
      checkFit(fit.garment, skipping, fit.cost)
        .map(({ found }) => found)
        .join(),
    ).toContain("by more than 1");
    expect(checkFit(fit.garment, { ...fit, cost: fit.cost - 0.5 }, fit.cost)).not.toEqual([]);
  });

  test("stays alike where its spread may not change", async () => {
    const stiff = await fitHere(soundGarment(sample.replace(", change: 1", "")), { rivals: 0 });
    if (stiff.status !== "fits") throw new Error(stiff.status);
    expect(stiff.fit.placements[0]!.sections).toHaveLength(1);
    expect((await grown()).cost).toBeLessThan(stiff.fit.cost);
  });
});

describe("what can't change from repeat to repeat", () => {
  test.each([
    ["like: crossed cord, interval: { allow: [2, 4], change: §1 }", "only what is counted in needles"],
    ["like: transferred cable, interval: { allow: [4, 6], change: §1 }", "only a cord may change"],
    ["like: crossed cord, spread: { change: §0 }", "is zero"],
    ["like: crossed cord, spread: { change: §half }", "is a plain number"],
  ])("%s", (text, message) => {
    const { text: file, place } = marked(garmentText({ motifs: `motifs:\n  plait: { ${text} }` }));
    const { garment, diagnostics } = readGarment(file, "a.yaml");
    expect(garment).toBeUndefined();
    expect(diagnostics).toMatchObject([{ severity: "error", place }]);
    expect(diagnostics[0]?.message).toContain(message);
  });

  test.each([
    ["columns: 2", ["place", 0, "columns"], "columns: 1"],
    ["margins: { left: 2..9 }", ["place", 0, "margins"], "side: { least: 5 }"],
  ])("a placement with %s", (text, path, expected) => {
    const file = garmentText({
      motifs: "motifs:\n  plait: { like: crossed cord, spread: { change: 1 } }",
      place: `place:\n  - { motif: plait, on: sleeve, from: rib top, to: underarm, ${text} }`,
    });
    const found = examine(readGarment(file, "a.yaml").garment!);
    expect(found).toMatchObject([{ severity: "error", code: "stiff-growth", path }]);
    expect(found[0]?.expected).toContain(expected);
  });
});
