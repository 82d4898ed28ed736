import fc from "fast-check";
import { expect, test } from "vitest";
import { keepsRule } from "../../../src/motif/rules.ts";
import { easedBy } from "../../../src/why/comparison.ts";
import { soundGarment } from "../../support/run-garment.ts";

/** The one rule of a crossed cord that is written so. */
function ruleOf(source: string) {
  const garment = soundGarment(`
format: evenrow/1
bed: { needles: 100 }
gauge: { ground: { stitches: 22, rows: 31, over: 10 cm }, cord: { needles: 3, stitches: 19, over: 10 cm } }
pieces: { cuff: { outline: [{ height: 0 cm, width: 20 cm }, { height: 20 cm, width: 20 cm }] } }
motifs: { plait: { like: crossed cord, rules: ["${source}"] } }
place: [{ motif: plait, on: cuff }]
`);
  return garment.motifs[0]!.rules[0]!;
}

test.each([
  ["spread <= interval + 2", 2, "spread <= interval + 4"],
  ["spread <= interval", 1, "spread <= interval + 1"],
  ["spread < interval - 2", 2, "spread < interval"],
  ["2 * spread >= interval", 3, "2 * spread >= interval - 3"],
  ["spread > 4", 1, "spread > 3"],
  ["spread * interval <= 2 * 3", 4, "spread * interval <= 2 * 3 + 4"],
  ["spread <= max(interval, 3)", 1, "spread <= max(interval, 3) + 1"],
])("%s that asks less by %i is %s", (source, by, expected) => {
  expect(easedBy(ruleOf(source), by)?.source).toBe(expected);
});

test("two sides that have to be equal cannot come closer by a constant", () => {
  expect(easedBy(ruleOf("mod(interval, 2) = 0"), 1)).toBeUndefined();
});

test("what is said means what is reckoned with, and asks less the more it gives up", () => {
  const sources = [
    "spread <= interval + 2",
    "spread < 5",
    "2 * spread >= interval - 1",
    "spread > interval * 2",
  ];
  fc.assert(
    fc.property(
      fc.constantFrom(...sources),
      fc.integer({ min: 1, max: 30 }),
      fc.integer({ min: 1, max: 20 }),
      fc.integer({ min: 1, max: 20 }),
      (source, by, spread, interval) => {
        const values = new Map([
          ["spread", spread],
          ["interval", interval],
        ]);
        const eased = easedBy(ruleOf(source), by)!;
        expect(keepsRule(eased, values)).toBe(keepsRule(ruleOf(eased.source), values));
        if (keepsRule(ruleOf(source), values)) expect(keepsRule(eased, values)).toBe(true);
      },
    ),
    { numRuns: 60 },
  );
});
