import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { type ReadResult, readGarment } from "../../../src/garment/read-garment.ts";
import { garmentText } from "../../support/garment-text.ts";

/** Characters that could steer a terminal, and what JavaScript makes of values that were not thought of. */
const UNFIT = /\p{Cc}|\[object|NaN|undefined is/u;

/** Either a garment, or at least one error; every diagnostic has a place, and nothing in it that steers a terminal. */
function expectAnswer({ garment, diagnostics, locate }: ReadResult): void {
  const errors = diagnostics.filter(({ severity }) => severity === "error");
  expect(garment === undefined).toBe(errors.length > 0);
  for (const { place, message, found, expected, path } of diagnostics) {
    expect(place?.line).toBeGreaterThanOrEqual(1);
    expect(place?.column).toBeGreaterThanOrEqual(1);
    expect(message.length).toBeGreaterThan(0);
    expect(`${message}${found}${expected}`).not.toMatch(UNFIT);
    locate(path);
  }
}

const WHOLE: unknown = parse(
  garmentText({
    yarn: "title: Fuzz\nyarn: { ground: { tex: 370 }, cord: { tex: 370 } }",
    pieces: `pieces:
  sleeve:
    outline: [{ height: 0 cm, width: 20 cm }, { height: 36 cm, left: 16 cm, right: 15 cm }]
    marks: { rib top: 4 cm, underarm: 33 cm }
    neck: [{ height: 34 cm, width: 2 cm }]
    grow: 1 cm
    shrink: 1 cm`,
    motifs: `motifs:
  plait:
    like: crossed cord
    interval: { allow: [2, 4, 6, 8], prefer: 4 }
    spread: { from: 2, to: 8, step: 2 }
    ease: { from: -5 %, to: 15 %, prefer: 2 % }
    rules: ["spread <= interval + 2"]
  cable: { like: transferred cable, cross: [1, 2], offset: -1, draw-in: 3 %, limits: { rows: 4 } }
  own:
    kind: cord
    quantities: { twist: { unit: rows, allow: 2..8 } }
    lead: twist
    repeat: 2 * twist
    strands: { one: { start: [1, 0], lead-in: [[2, twist]], repeat: [[-2, twist], [2, 2 * twist]] }, two: { start: [3, 0], repeat: [[3, twist]] } }
    folded: [one, two]
    order: [two, one]
    reserve: 10 %`,
    place: `place:
  - { motif: plait, on: sleeve, from: rib top, to: underarm, repeats: { allow: 1..9, prefer: 3 }, columns: 2, gap: [1, 2], margins: { bottom: 2, top: 1..4, side: { least: 2 } } }
  - { motif: own, on: sleeve, margins: { left: { least: 2 }, right: 3 } }`,
    weights: "weights: { length: 2, twist: 1 }",
  }),
);

type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** Values that a slip of the pen, or malice, may put anywhere. */
const oddValue: fc.Arbitrary<Json> = fc.oneof(
  fc.constantFrom<Json[]>(
    ...[
      "",
      "no",
      "5 cm",
      "-5 cm",
      "5",
      "5 %",
      "2..9",
      "9..2",
      "1,5 cm",
      "1/0 cm",
      "interval",
      "2 * interval",
      "__proto__",
    ],
    ...[
      "constructor",
      "neck",
      "cast-on",
      "sleeve",
      "plait",
      "1e308 cm",
      "\u001b[31m",
      "\u202e",
      "a".repeat(500),
    ],
    ...[0, -0, 1, -1, 2.5, 1e308, -1e308, 5e-324, 1e21, 123456789],
    ...[true, false, null],
  ),
  fc.constantFrom<Json[]>(
    [],
    {},
    [[]],
    [1, 2],
    { least: 2 },
    { from: 1, to: 4 },
    { allow: 3 },
    { start: [1, 0] },
  ),
  fc.string({ unit: "binary", maxLength: 12 }),
  fc.double(),
);

/** A copy of `value` in which what lies at the `steps`-th branch, and so on down, is changed by `change`. */
function mutated(value: Json, steps: readonly number[], change: Change): Json {
  const [step = 0, ...rest] = steps;
  if (steps.length === 0 || value === null || typeof value !== "object") return change.to;
  if (Array.isArray(value)) {
    const items: readonly Json[] = value;
    if (items.length === 0) return [change.to];
    const at = step % items.length;
    if (rest.length === 0 && change.how === "remove") return items.filter((_, index) => index !== at);
    if (rest.length === 0 && change.how === "double") return [...items, items[at] ?? null];
    return items.map((item, index) => (index === at ? mutated(item, rest, change) : item));
  }
  const entries = Object.entries(value as { readonly [key: string]: Json });
  if (entries.length === 0) return { [change.key]: change.to };
  const at = step % entries.length;
  if (rest.length === 0 && change.how === "remove")
    return Object.fromEntries(entries.filter((_, index) => index !== at));
  if (rest.length === 0 && change.how === "rename")
    return Object.fromEntries(entries.map(([key, item], index) => [index === at ? change.key : key, item]));
  if (rest.length === 0 && change.how === "double")
    return Object.fromEntries([...entries, [change.key, change.to]]);
  return Object.fromEntries(
    entries.map(([key, item], index) => [key, index === at ? mutated(item, rest, change) : item]),
  );
}

interface Change {
  readonly how: "replace" | "remove" | "rename" | "double";
  readonly key: string;
  readonly to: Json;
}

const change: fc.Arbitrary<Change> = fc.record({
  how: fc.constantFrom("replace", "remove", "rename", "double"),
  key: fc.oneof(
    fc.constantFrom(
      "width",
      "allow",
      "prefer",
      "like",
      "kind",
      "spread",
      "__proto__",
      "toString",
      "least",
      "unit",
    ),
    fc.string({ maxLength: 8 }),
  ),
  to: oddValue,
});

const steps = fc.array(fc.nat({ max: 20 }), { minLength: 1, maxLength: 7 });

describe("whatever is read", () => {
  it("starts from a garment without a mistake", () => {
    expect(readGarment(stringify(WHOLE), "fuzz.yaml").diagnostics).toEqual([]);
  });

  it("is a garment or is told what is wrong, for garments changed in one to four places", () => {
    let refused = 0;
    fc.assert(
      fc.property(
        fc.array(fc.tuple(steps, change), { minLength: 1, maxLength: 4 }),
        fc.boolean(),
        (changes, isJson) => {
          const value = changes.reduce((before, [path, one]) => mutated(before, path, one), WHOLE as Json);
          const result = readGarment(isJson ? JSON.stringify(value) : stringify(value), "fuzz.yaml");
          expectAnswer(result);
          if (!result.garment) refused += 1;
        },
      ),
      { seed: 2, numRuns: 1500 },
    );
    expect(refused).toBeGreaterThan(700);
  });

  it("is a garment or is told what is wrong, for text that is cut, doubled or mixed up", () => {
    const text = garmentText();
    fc.assert(
      fc.property(
        fc.nat({ max: text.length }),
        fc.nat({ max: text.length }),
        fc.oneof(
          fc.string({ maxLength: 5 }),
          fc.constantFrom(":", "- ", "{", "}", "[", '"', "'", "\t", "\n", "&a ", "*a", "#", "|"),
        ),
        (from, to, put) => {
          expectAnswer(readGarment(text.slice(0, from) + put + text.slice(to), "fuzz.yaml"));
        },
      ),
      { seed: 3, numRuns: 1000 },
    );
  });

  it("is told what is wrong, for any text and any bytes", () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: "binary" }), fc.string(), fc.uint8Array({ maxLength: 200 })),
        (input) => {
          const result = readGarment(input, "fuzz.yaml");
          expect(result.garment).toBeUndefined();
          expectAnswer(result);
        },
      ),
      { seed: 4, numRuns: 1000 },
    );
  });
});
