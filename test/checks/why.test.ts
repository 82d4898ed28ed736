import { beforeAll, describe, expect, test } from "vitest";
import { parse, stringify } from "yaml";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { applyEdits } from "../../src/explore/apply-edits.ts";
import { allowing } from "../../src/explore/change-allows.ts";
import type { Edit } from "../../src/explore/edit.ts";
import { readSource } from "../../src/explore/read-source.ts";
import { rulesFor } from "../../src/explore/rules-for.ts";
import { rulesOf } from "../../src/fit/refusal/rules-of.ts";
import { only } from "../../src/garment/allowed.ts";
import type { Garment } from "../../src/garment/garment.ts";
import type { LeastChange } from "../../src/why/least-changes.ts";
import { waysOf } from "../../src/why/ways.ts";
import { type WhyNot, whyNot } from "../../src/why/why.ts";
import { exhaustiveBest } from "../support/exhaustive.ts";
import type { GarmentFile } from "../support/garment-file.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { lifted } from "../support/lifted.ts";
import { unfittingGarments } from "../support/random/unfitting.ts";

/** Random small garments that nothing fits: a few each time, all 300 where EVENROW_LONG is set. */
const wanted = process.env.EVENROW_LONG ? 300 : 20;

/** Whether the exhaustive search finds any fit of a garment. */
function fitsByTrying(plain: GarmentFile, garment: Garment): boolean {
  return exhaustiveBest(plain, { edges: edgesOf(garment), anyFit: true }) !== undefined;
}

interface Case {
  readonly plain: GarmentFile;
  readonly source: string;
  readonly garment: Garment;
  readonly why: WhyNot;
}

const cases: Case[] = [];

beforeAll(async () => {
  for (const plain of unfittingGarments(2 * wanted, 20261130)) {
    const source = stringify(plain);
    const { garment } = readSource(source, "test.yaml");
    if (cases.length === wanted || !garment || fitsByTrying(plain, garment)) continue;
    const pace = { leftMs: () => 60_000, goOn: () => {} };
    const why = await whyNot({ source, name: "test.yaml", garment }, simplexEngine, pace);
    cases.push({ plain, source, garment, why });
  }
}, 600_000);

/** The referee's verdict on the file's text after some edits. */
function fitsAfter({ source }: Case, edits: readonly Edit[]): boolean {
  const edited = applyEdits(source, edits);
  if (!("text" in edited)) throw new Error(edited.refused);
  const { garment } = readSource(edited.text, "test.yaml");
  if (!garment) throw new Error(`the file would be wrong:\n${edited.text}`);
  return fitsByTrying(parse(edited.text) as GarmentFile, garment);
}

describe(`of ${wanted} random small garments that nothing fits, by exhaustive search`, () => {
  test("the rules that are found cannot hold together whatever else gives way, and none of them can be left out", () => {
    expect(cases).toHaveLength(wanted);
    let judged = 0;
    for (const { plain, garment, why, source } of cases) {
      const all = rulesOf(garment).map(({ rule }) => rule);
      const conflict = why.conflict.map(({ rule }) => rule);
      expect(why).toMatchObject({ complete: true, smallest: true });
      const others = all.filter((rule) => !conflict.includes(rule));
      const fitsWithout = (left?: string): boolean =>
        fitsByTrying(lifted(plain, left === undefined ? others : [...others, left]), garment);
      expect(fitsWithout(), `${conflict.join(" ")}\n${source}`).toBe(false);
      for (const rule of conflict) {
        expect(fitsWithout(rule), `without ${rule} of ${conflict.join(" ")}\n${source}`).toBe(true);
        judged++;
      }
    }
    expect(judged).toBeGreaterThan(2 * wanted);
  }, 1_200_000);

  test("each least change admits a fit, and a step less of any rule in it does not", () => {
    let [changes, less] = [0, 0];
    for (const one of cases) {
      for (const change of one.why.changes) {
        expect(fitsAfter(one, change.edits), `${change.words}\n${one.source}`).toBe(true);
        changes++;
        for (const edits of withLess(one, change)) {
          expect(
            fitsAfter(one, edits),
            `${JSON.stringify(edits)} less than ${change.words}\n${one.source}`,
          ).toBe(false);
          less++;
        }
      }
    }
    expect(changes).toBeGreaterThan(wanted);
    expect(less).toBeGreaterThan(wanted);
  }, 1_200_000);

  test("no rule is missed that could give way alone, and no two where none can alone", () => {
    let [alone, inPairs] = [0, 0];
    for (const { plain, garment, why, source } of cases) {
      const all = rulesOf(garment).map(({ rule }) => rule);
      const given = new Set(
        why.changes.map(({ given: parts }) =>
          parts
            .map(({ rule }) => rule)
            .sort()
            .join(" "),
        ),
      );
      const helps = (rules: readonly string[]): boolean => fitsByTrying(lifted(plain, rules), garment);
      const single = all.filter((rule) => helps([rule]));
      if (single.length > 0) {
        expect([...given].sort(), source).toEqual([...single].sort());
        alone++;
        continue;
      }
      const pairs = all.flatMap((one, at) => all.slice(at + 1).map((other) => [one, other].sort()));
      const helping = pairs.filter(helps).map((pair) => pair.join(" "));
      expect([...given].sort(), source).toEqual(helping.sort());
      if (helping.length > 0) inPairs++;
    }
    expect(alone).toBeGreaterThan(wanted / 4);
    expect(inPairs).toBeGreaterThan(wanted / 10);
  }, 1_200_000);
});

/** What remains of a change when one of its rules gives way by a step less, the others as far as before. */
function withLess({ source, garment }: Case, { given, edits }: LeastChange): readonly (readonly Edit[])[] {
  const movable = rulesFor(garment);
  const ownEdits = (rule: string): readonly Edit[] => edits.filter(({ path }) => isOf(path, rule));
  return given.map(({ rule, steps }) => {
    const others = edits.filter((edit) => !ownEdits(rule).includes(edit));
    return [...others, ...lessOf(rule, steps)];
  });

  function lessOf(id: string, steps: number): readonly Edit[] {
    const rule = movable.find((one) => one.id === id);
    if (steps === 1 || !rule) return [];
    const { allows } = rule;
    if (allows.kind === "values" && allows.allowed.kind === "list") {
      const { values } = allows.allowed;
      const nearer = values.flatMap((value) =>
        Array.from({ length: 2 * steps - 1 }, (_, index) => value - steps + 1 + index),
      );
      const least = ["repeats", "columns", "interval", "spread"].includes(String(rule.path.at(-1))) ? 1 : 0;
      const change = allowing(source, rule, only(...nearer.filter((value) => value >= least)));
      return "edits" in change ? change.edits : [];
    }
    const named = rulesOf(garment).find((one) => one.rule === id)!;
    const way = waysOf(source, garment, named, movable).find(({ barely }) =>
      barely(steps).some(({ change }) => "edits" in change && sameEdits(change.edits, ownEdits(id))),
    )!;
    const { change } = way.barely(steps - 1)[0]!;
    return "edits" in change ? change.edits : [];
  }
}

const isOf = (path: Edit["path"], rule: string): boolean => `${path.join(".")}.`.startsWith(`${rule}.`);

const sameEdits = (some: readonly Edit[], others: readonly Edit[]): boolean =>
  JSON.stringify(some) === JSON.stringify(others);
