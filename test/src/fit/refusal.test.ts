import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Engine } from "../../../solver/program.ts";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import type { NamedRule } from "../../../src/fit/refusal.ts";
import { breakDown, conflictAmong } from "../../../src/fit/refusal.ts";
import type { Garment } from "../../../src/garment/garment.ts";
import { garmentOf } from "../../support/run-garment.ts";
import { threeByFour } from "../../support/three-by-four.ts";
import { garment } from "./support/plain-parts.ts";

/** Rules that say no more than their names; which of them are lifted is kept in the title. */
const rulesNamed = (...names: readonly string[]): readonly NamedRule[] =>
  names.map((rule) => ({
    rule,
    path: [rule],
    words: rule,
    lift: (one) => ({ ...one, title: `${one.title}${rule}` }),
  }));

const lifted = ({ title }: Garment): ReadonlySet<string> => new Set(title);

const start = garment({ title: "" });

/** Fits where of each conflict at least one rule is lifted. */
const fitsUnless =
  (...conflicts: readonly string[]) =>
  async (one: Garment): Promise<boolean> =>
    conflicts.every((conflict) => [...conflict].some((rule) => lifted(one).has(rule)));

const namesOf = (rules: readonly NamedRule[]): string => rules.map(({ rule }) => rule).join("");

describe("rules that cannot hold together", () => {
  test("are those that each stand in the way when all others of them hold", async () => {
    const { rules, liftable } = await conflictAmong(rulesNamed(..."abcde"), start, fitsUnless("bd"));
    expect([namesOf(rules), liftable]).toEqual(["bd", true]);
  });

  test("are one conflict of several", async () => {
    const { rules } = await conflictAmong(rulesNamed(..."abcde"), start, fitsUnless("ac", "bde"));
    // Lifting a leaves the other conflict in the way, so a goes; of b, d and e each is needed.
    expect(namesOf(rules)).toBe("bde");
  });

  test("are none where something else is in the way", async () => {
    const never = async (): Promise<boolean> => false;
    expect(await conflictAmong(rulesNamed("a", "b"), start, never)).toEqual({ rules: [], liftable: false });
  });

  test("are told step by step: those that are found, and those that are not yet tried", async () => {
    const told: string[] = [];
    await conflictAmong(rulesNamed(..."abcd"), start, fitsUnless("bd"), (left) => {
      told.push(namesOf(left));
    });
    // a is lifted for good, b stays, c is lifted for good, d stays.
    expect(told).toEqual(["bcd", "bcd", "bd", "bd"]);
  });

  test("are a least conflict, whatever the conflicts are", async () => {
    const someRules = fc.subarray([..."abcdef"], { minLength: 1 }).map((names) => names.join(""));
    await fc.assert(
      fc.asyncProperty(fc.array(someRules, { minLength: 1, maxLength: 4 }), async (conflicts) => {
        const fits = fitsUnless(...conflicts);
        const { rules } = await conflictAmong(rulesNamed(..."abcdef"), start, fits);
        const kept = namesOf(rules);
        const without = (names: string): Promise<boolean> => fits(garment({ title: names }));
        // With all others lifted they still cannot hold together, and lifting any one of them lets it fit.
        const others = [..."abcdef"].filter((name) => !kept.includes(name)).join("");
        expect(await without(others)).toBe(false);
        for (const one of kept) expect(await without(others + one)).toBe(true);
      }),
      { numRuns: 50 },
    );
  });
});

describe("a garment that does not fit", () => {
  /** Two cords that run straight up, 12 needles from the centre. */
  const rails = {
    kind: "cord",
    quantities: {},
    lead: 0,
    repeat: 5,
    // 5 rows of 4 mm are 4 cord stitches of 5 mm.
    strands: {
      left: { start: [-12, 0], repeat: [[-12, 5]] },
      right: { start: [12, 0], repeat: [[12, 5]] },
    },
    ease: { from: "0 %", to: "0 %" },
  };

  /** A panel of 12 rows and 20 needles to each side. */
  const panel = (more: object, margins: object = {}): Garment =>
    garmentOf({
      ...threeByFour,
      pieces: {
        panel: {
          outline: [
            { height: "0 cm", width: "12 cm" },
            { height: "4.8 cm", width: "12 cm" },
          ],
          marks: { middle: "2.4 cm" },
        },
      },
      motifs: { rails },
      place: [{ motif: "rails", on: "panel", from: "cast-on", to: "bind-off", repeats: 2, margins }],
      ...more,
    });

  test("is told by the needles that have to stay free beside its motif", async () => {
    // 12 needles to a side and 9 free are 21 of 20.
    const { rules, liftable } = await breakDown(panel({}, { side: { least: 9 } }), simplexEngine);
    expect(rules.map(({ rule }) => rule)).toEqual(["place.0.margins.side"]);
    expect(liftable).toBe(true);
  });

  const place = { motif: "rails", on: "panel", repeats: 1 };
  /** Two placements on one piece that have to fit at every gauge: no way but to ask the engine. */
  const steadyTied = {
    steady: true,
    motifs: { rails: { ...rails, ease: { from: "-40 %", to: "60 %" } } },
    place: [
      { ...place, from: "cast-on", to: "middle" },
      { ...place, from: "middle", to: "bind-off" },
    ],
  };

  test("is taken not to fit where the engine comes to no answer", async () => {
    const tired: Engine = async () => ({ status: "failed", engine: "tired", reason: "it is tired" });
    const { rules } = await breakDown(panel(steadyTied), tired);
    // It is asked as long as the fit has to be steady.
    expect(rules.map(({ rule }) => rule)).toEqual(["steady"]);
  });

  test("is not told at all where the engine breaks", async () => {
    const broken: Engine = () => Promise.reject(new TypeError("it is broken"));
    await expect(breakDown(panel(steadyTied), broken)).rejects.toThrow("it is broken");
  });
});
