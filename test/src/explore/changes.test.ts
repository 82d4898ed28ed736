import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { applyEdits } from "../../../src/explore/apply-edits.ts";
import { moveEnd, typeAllows } from "../../../src/explore/change-allows.ts";
import { movePreference, typePreference, typeWeight } from "../../../src/explore/change-preference.ts";
import { type Change, isRefused } from "../../../src/explore/edit.ts";
import type { GarmentRule } from "../../../src/explore/garment-rule.ts";
import { heldBackBy, helpful, stepsSentence } from "../../../src/explore/holding-back.ts";
import { readSource } from "../../../src/explore/read-source.ts";
import { rulesFor } from "../../../src/explore/rules-for.ts";
import { givingSteps, tryStep } from "../../../src/explore/steps.ts";
import { fitGarment } from "../../../src/fit/solve.ts";
import { sample } from "../../tui/support/driver.ts";

/** A garment that takes a built-in motif as it is. */
const builtIn = `format: evenrow/1
bed: { needles: 150 }
gauge:
  ground: { stitches: 22, rows: 31, over: 10 cm }
  cord: { needles: 3, stitches: 19, over: 10 cm }
pieces:
  sleeve:
    outline:
      - { height: 0 cm, width: 24 cm }
      - { height: 36 cm, width: 31 cm }
place:
  - motif: crossed cord   # as it comes
    on: sleeve
`;

/** A garment whose motif is written out in full. */
const ownMotif = builtIn
  .replace(
    "place:",
    `motifs:
  rope:
    kind: cable
    quantities:
      every: { unit: rows, allow: 4..8, prefer: 6 }
    rules: [ "every >= 4" ]
    cross: [2, 2]
    lead: every
    repeat: every
    crossings: { start: [0, 0], repeat: [[0, every]] }
place:`,
  )
  .replace("crossed cord", "rope");

const ruleOf = (source: string, name: string): GarmentRule => {
  const { garment, diagnostics } = readSource(source, "test.yaml");
  const rule = garment && rulesFor(garment).find((one) => one.name === name);
  if (!rule) throw new Error(`no rule ${name}: ${diagnostics.map(({ message }) => message).join("; ")}`);
  return rule;
};

function changed(source: string, change: Change): string {
  if (isRefused(change)) throw new Error(change.refused);
  const edited = applyEdits(source, change.edits);
  if (!("text" in edited)) throw new Error(edited.refused);
  expect(readSource(edited.text, "test.yaml").garment, edited.text).toBeDefined();
  return edited.text;
}

describe("where a rule is written", () => {
  test("a quantity that a built-in motif brings is overridden with its preference, and only then written", () => {
    const text = changed(builtIn, moveEnd(builtIn, ruleOf(builtIn, "spread"), "to", -1));
    expect(ruleOf(text, "spread")).toMatchObject({ prefer: 3 });
    expect(ruleOf(text, "spread").allows).toMatchObject({
      allowed: { values: expect.not.arrayContaining([20]) },
    });
    expect(text).toContain("# as it comes");
  });

  test("a quantity of a motif that is written out in full is changed where it stands", () => {
    const rule = ruleOf(ownMotif, "every");
    expect(changed(ownMotif, moveEnd(ownMotif, rule, "from", 1))).toBe(ownMotif.replace("4..8", "5..8"));
    expect(changed(ownMotif, movePreference(ownMotif, rule, 1))).toBe(
      ownMotif.replace("prefer: 6", "prefer: 7"),
    );
  });

  test("a preference for what had none stands beside what was allowed", () => {
    const source = sample("sleeve");
    const text = changed(source, typePreference(source, ruleOf(source, "repeats"), "7"));
    expect(text).toContain("repeats: { allow: 1..99, prefer: 7 }");
    const columns = changed(source, typePreference(source, ruleOf(source, "columns"), "1"));
    expect(columns).toContain("columns: { allow: 1, prefer: 1 }");
  });

  test("ease, lengths, least margins and the bed keep their units", () => {
    const source = sample("sleeve");
    const typed = (name: string, text: string): string =>
      changed(source, typeAllows(source, ruleOf(source, name), text));
    expect(typed("ease", "-3..12 %")).toBe(source.replace("from: -5 %, to: 15 %", "from: -3 %, to: 12 %"));
    expect(typed("grow", "0.5 in")).toBe(source.replace("grow: 1 cm  ", "grow: 0.5 in  "));
    expect(typed("side margin", "7")).toBe(source.replace("least: 5", "least: 7"));
    expect(typed("needles", "160")).toBe(source.replace("needles: 150", "needles: 160"));
  });

  test("a length goes by whole rows, in the shortest length that holds them", () => {
    const source = sample("sleeve");
    const rule = ruleOf(source, "grow");
    expect(changed(source, moveEnd(source, rule, "to", 1))).toContain("grow: 1.3 cm");
    expect(changed(source, moveEnd(source, rule, "to", -1))).toContain("grow: 6.5 mm");
  });

  test("a comparison is typed anew, and taken out by typing nothing", () => {
    const rule = ruleOf(ownMotif, "comparison");
    expect(changed(ownMotif, typeAllows(ownMotif, rule, "every >= 6"))).toContain("every >= 6");
    expect(changed(ownMotif, typeAllows(ownMotif, rule, " "))).not.toContain("every >= 4");
  });

  test("a weight is added where none is written", () => {
    const text = changed(builtIn, typeWeight(builtIn, ruleOf(builtIn, "spread"), "2.5"));
    expect(ruleOf(text, "spread").weight).toEqual({ term: "spread", value: 2.5 });
    expect(typeWeight(builtIn, ruleOf(builtIn, "side margin"), "1")).toHaveProperty("refused");
  });
});

describe("steps of rules", () => {
  test("none is left out, save those that are held fast", () => {
    const { garment } = readSource(sample("sleeve"), "sleeve.yaml");
    const rules = rulesFor(garment!);
    const steps = givingSteps(rules);
    const named = new Set(steps.map(({ rule }) => rule));
    expect(rules.filter(({ id }) => !named.has(id)).map(({ name }) => name)).toEqual(["columns"]);
  });

  test("each outcome is what the changed file's own fit says, and lets nothing become dearer", async () => {
    for (const name of ["front", "cable-sleeve"]) {
      const source = sample(name);
      const { garment } = readSource(source, name);
      const result = await fitGarment(garment!, simplexEngine, { rivals: 0 });
      if (result.status !== "fits") throw new Error("the sample fits");
      for (const step of givingSteps(rulesFor(garment!))) {
        const outcome = await tryStep(source, name, step, result.fit, simplexEngine);
        if (!outcome) continue;
        const rule = rulesFor(garment!).find(({ id }) => id === step.rule)!;
        const moved = changed(source, moveEnd(source, rule, step.end, step.by));
        const own = await fitGarment(readSource(moved, name).garment!, simplexEngine, { rivals: 0 });
        expect(own.status).toBe("fits");
        expect(outcome.costChange).toBeCloseTo(
          own.status === "fits" ? own.fit.cost - result.fit.cost : Number.NaN,
          6,
        );
        expect(outcome.costChange).toBeLessThan(1e-6);
      }
    }
  });

  test("where nothing fits, a step that would let it fit is told first", async () => {
    const source = sample("too-narrow").replace("side: { least: 5 }", "side: { least: 4 }");
    const { garment } = readSource(source, "too-narrow.yaml");
    const outcomes = [];
    for (const step of givingSteps(rulesFor(garment!))) {
      const outcome = await tryStep(source, "too-narrow.yaml", step, undefined, simplexEngine);
      if (outcome) outcomes.push(outcome);
    }
    expect(helpful(outcomes).map((outcome) => stepsSentence([outcome]))).toEqual([
      "One step of spread of wide plait: 5..9: it fits.",
      "One step of side margin of wide plait on cuff: 3 or more: it fits.",
    ]);
  });

  test("what holds a fit back is its dearest term", async () => {
    const { garment } = readSource(sample("front"), "front.yaml");
    const result = await fitGarment(garment!, simplexEngine, { rivals: 0 });
    expect(result.status === "fits" && heldBackBy(result.fit)).toBe(
      "Held back by interval: 1 row off, then ease.",
    );
  });
});
