import { describe, expect, test } from "vitest";
import type { NamedRule } from "../../../../src/fit/refusal/rule.ts";
import { inWords, meetingInWords, rulesOf } from "../../../../src/fit/refusal/rules-of.ts";
import { type Allowed, anyFrom, only } from "../../../../src/garment/allowed.ts";
import type { Garment, Piece, Placement } from "../../../../src/garment/garment.ts";
import type { Motif, Quantity } from "../../../../src/motif/motif.ts";
import { cable, laid, plait, smallGarment, strip } from "../../../support/small-garment.ts";

/** Two pieces that carry motifs and one that carries none, and a motif that is laid nowhere. */
const garment: Garment = smallGarment({
  steady: "100 %",
  pieces: {
    front: strip(30, 60, { marks: { waist: "80 mm" }, grow: "8 mm", shrink: "12.5 mm" }),
    back: strip(30, 60, { marks: { waist: "80 mm" } }),
    belt: strip(10, 10, { grow: "4 mm" }),
  },
  motifs: {
    plait: plait([2, 4, 6], "2..5", {
      ease: { from: "-2.5 %", to: "15 %" },
      rules: ["spread <= interval", "spread >= 3"],
    }),
    spare: plait(4, 3),
    ropes: cable(6),
  },
  place: [
    laid("plait", "front", { bottom: "0..3", top: [0, 2], side: { least: 2 } }, { to: "waist" }),
    laid(
      "ropes",
      "front",
      { bottom: "0..9", top: "0..9", side: { least: 1 } },
      { from: "waist", columns: 2, gap: 2, meet: [{ mark: "waist", at: "whole" }] as never },
    ),
    {
      motif: "plait",
      on: "back",
      from: "cast-on",
      to: "waist",
      repeats: 2,
      columns: [2, 3],
      gap: [1, 3],
      margins: { left: [4, 5], right: "2..5" },
      meet: [
        { mark: "waist", at: "half" },
        { mark: "cast-on", at: 2 },
      ] as never,
    },
  ],
  match: [
    { motif: "plait", on: ["front", "back"], mark: "waist" },
    { motif: "plait", on: ["front", "back"], mark: "cast-on" },
  ],
});

const rule = (name: string): NamedRule => rulesOf(garment).find((one) => one.rule === name)!;
const lifted = (name: string, from = garment): Garment => rule(name).lift(from);

const withPlacement = (index: number, change: (one: Placement) => Partial<Placement>): Garment => ({
  ...garment,
  placements: garment.placements.map((one, at) => (at === index ? { ...one, ...change(one) } : one)),
});
const withMargins = (index: number, margins: Partial<Placement["margins"]>): Garment =>
  withPlacement(index, (one) => ({ margins: { ...one.margins, ...margins } }));
const withMotif = (name: string, change: (one: Motif) => object): Garment => ({
  ...garment,
  motifs: garment.motifs.map((one) => (one.name === name ? ({ ...one, ...change(one) } as Motif) : one)),
});
const withPiece = (name: string, change: Partial<Piece>): Garment => ({
  ...garment,
  pieces: garment.pieces.map((one) => (one.name === name ? { ...one, ...change } : one)),
});

test("every limit of what is laid is a rule, in the order of the file, as a knitter says it", () => {
  const rules = rulesOf(garment);
  expect(rules.map(({ rule, words }) => [rule, words])).toEqual([
    ["bed.needles", "the bed has 100 needles"],
    [
      "steady",
      "ease and length hold for every gauge within 1.25 % in stitches, 1 % in rows and 1.25 % in the cord",
    ],
    ["place.0.columns", "plait on front: columns 1"],
    ["place.0.gap", "plait on front: gap 0 needles"],
    ["place.0.margins.side", "plait on front: at least 2 needles at each side"],
    ["place.0.margins.bottom", "plait on front: bottom margin 0 to 3 rows"],
    ["place.0.margins.top", "plait on front: top margin 0 or 2 rows"],
    ["place.0.repeats", "plait on front: repeats 1 or more"],
    ["place.1.columns", "ropes on front: columns 2"],
    ["place.1.gap", "ropes on front: gap 2 needles"],
    ["place.1.margins.side", "ropes on front: at least 1 needle at each side"],
    ["place.1.margins.bottom", "ropes on front: bottom margin 0 to 9 rows"],
    ["place.1.margins.top", "ropes on front: top margin 0 to 9 rows"],
    ["place.1.meet", "ropes on front: whole at waist"],
    ["place.1.repeats", "ropes on front: repeats 1 or more"],
    ["place.2.columns", "plait on back: columns 2 or 3"],
    ["place.2.gap", "plait on back: gap 1 or 3 needles"],
    ["place.2.margins.left", "plait on back: left margin 4 or 5 needles"],
    ["place.2.margins.right", "plait on back: right margin 2 to 5 needles"],
    ["place.2.margins.bottom", "plait on back: bottom margin 0 or more rows"],
    ["place.2.margins.top", "plait on back: top margin 0 or more rows"],
    ["place.2.meet.0", "plait on back: half at waist"],
    ["place.2.meet.1", "plait on back: 2 rows into its repeat at cast-on"],
    ["place.2.repeats", "plait on back: repeats 2"],
    ["motifs.plait.rules.0", "plait: spread <= interval"],
    ["motifs.plait.rules.1", "plait: spread >= 3"],
    ["motifs.plait.interval", "plait: interval 2, 4 or 6 rows"],
    ["motifs.plait.spread", "plait: spread 2 to 5 needles"],
    ["motifs.plait.ease", "plait: ease from -2.5 % to 15 %"],
    ["motifs.ropes.interval", "ropes: interval 6 rows"],
    ["motifs.ropes.offset", "ropes: offset 0 needles"],
    ["match.0", "plait stands alike at waist of front and back"],
    ["match.1", "plait stands alike at cast-on of front and back"],
    ["pieces.front.shrink", "front may shrink by 1.25 cm"],
    ["pieces.front.grow", "front may grow by 0.8 cm"],
    ["pieces.back.shrink", "back may shrink by 0 cm"],
    ["pieces.back.grow", "back may grow by 0 cm"],
  ]);
  for (const { rule: name, path } of rules) expect(path.join(".")).toBe(name);
});

test.each<[Quantity["unit"], string, string]>([
  ["rows", "spread 1 row", "spread 1 or 2 rows"],
  ["needles", "spread 1 needle", "spread 1 or 2 needles"],
  ["stitches", "spread 1 stitch", "spread 1 or 2 stitches"],
  ["strands", "spread 1 strand", "spread 1 or 2 strands"],
])("a single one of %s is said so", (unit, single, several) => {
  const spread = (allowed: Allowed): Garment =>
    withMotif("plait", () => ({ quantities: [{ name: "spread", unit, allowed }] }));
  const words = (from: Garment): string => rulesOf(from).find(({ path }) => path[2] === "spread")!.words;
  expect([words(spread(only(1))), words(spread(only(1, 2)))]).toEqual([
    `plait: ${single}`,
    `plait: ${several}`,
  ]);
});

test("a margin or a gap of a single row or needle is said so", () => {
  const narrow = withPlacement(2, () => ({
    gap: { allowed: only(1) },
    margins: { bottom: only(1), top: only(1), sides: { kind: "free", left: only(1), right: only(1) } },
  }));
  const words = rulesOf(narrow)
    .filter(({ path }) => path[1] === 2)
    .map((one) => one.words);
  expect(words.slice(1, 6)).toEqual([
    "plait on back: gap 1 needle",
    "plait on back: left margin 1 needle",
    "plait on back: right margin 1 needle",
    "plait on back: bottom margin 1 row",
    "plait on back: top margin 1 row",
  ]);
});

test("who wears it and what is on hand are rules, too", () => {
  const names = rulesOf({
    ...garment,
    wearer: { path: ["wearer"], ageYears: 5 },
    onHand: {
      supplies: [{ path: ["on hand", "cord"], of: "cord", amount: 9, unit: "m" }],
      leastWaste: false,
    },
  }).map(({ rule: name }) => name);
  expect(names.slice(0, 5)).toEqual(["bed.needles", "wearer", "steady", "on hand.cord", "place.0.columns"]);
});

describe("a rule is lifted alone", () => {
  // One row is 4 mm high: 24 rows are 96 mm.
  test.each<[string, Garment]>([
    ["bed.needles", { ...garment, bed: { ...garment.bed, needles: 10_000 } }],
    ["place.0.columns", withPlacement(0, () => ({ columns: { allowed: only(1) } }))],
    ["place.1.columns", withPlacement(1, () => ({ columns: { allowed: only(1, 2) } }))],
    ["place.2.columns", withPlacement(2, () => ({ columns: { allowed: only(1, 2, 3, 4, 5, 6, 7) } }))],
    ["place.0.gap", withPlacement(0, () => ({ gap: { allowed: only(0) } }))],
    ["place.1.gap", withPlacement(1, () => ({ gap: { allowed: only(0, 2) } }))],
    [
      "place.2.gap",
      withPlacement(2, () => ({ gap: { allowed: only(...Array.from({ length: 14 }, (_, gap) => gap)) } })),
    ],
    ["place.0.margins.side", withMargins(0, { sides: { kind: "centred", least: 0 } })],
    [
      "place.2.margins.left",
      withMargins(2, { sides: { kind: "free", left: anyFrom(0), right: only(2, 3, 4, 5) } }),
    ],
    [
      "place.2.margins.right",
      withMargins(2, { sides: { kind: "free", left: only(4, 5), right: anyFrom(0) } }),
    ],
    ["place.0.margins.bottom", withMargins(0, { bottom: anyFrom(0) })],
    ["place.1.margins.top", withMargins(1, { top: anyFrom(0) })],
    ["place.1.meet", withPlacement(1, () => ({ meet: [] }))],
    ["place.2.meet.0", withPlacement(2, ({ meet }) => ({ meet: meet.slice(1) }))],
    ["place.2.meet.1", withPlacement(2, ({ meet }) => ({ meet: meet.slice(0, 1) }))],
    ["place.2.repeats", withPlacement(2, () => ({ repeats: { allowed: anyFrom(1) } }))],
    ["motifs.plait.rules.0", withMotif("plait", (one) => ({ rules: one.rules.slice(1) }))],
    ["motifs.plait.rules.1", withMotif("plait", (one) => ({ rules: one.rules.slice(0, 1) }))],
    [
      "motifs.plait.ease",
      withMotif("plait", (one) => ({ ease: { ...(one as { ease?: object }).ease, from: -0.5, to: 2 } })),
    ],
    ["match.0", { ...garment, matches: garment.matches.slice(1) }],
    ["match.1", { ...garment, matches: garment.matches.slice(0, 1) }],
    ["pieces.front.grow", withPiece("front", { growMm: 96 })],
    ["pieces.back.shrink", withPiece("back", { shrinkMm: 96 })],
  ])("%s", (name, expected) => {
    expect(lifted(name)).toStrictEqual(expected);
  });

  test("a quantity is as near as it is looked for, and what it should rather be stays", () => {
    const spread = {
      name: "spread",
      unit: "needles",
      allowed: only(...Array.from({ length: 17 }, (_, at) => at + 1)),
    };
    expect(lifted("motifs.plait.spread")).toEqual(
      withMotif("plait", ({ quantities }) => ({
        quantities: quantities.map((one) => (one.name === "spread" ? { ...one, ...spread } : one)),
      })),
    );
  });

  test("a piece that may change by more than is looked for keeps that", () => {
    const long = withPiece("front", { growMm: 100, shrinkMm: 97 });
    const [shrink, grow] = rulesOf(long).filter(({ path }) => path[1] === "front");
    expect(shrink!.lift(long)).toStrictEqual(long);
    expect(grow!.lift(long)).toStrictEqual(long);
  });
});

describe("where a rule finds what it is about changed meanwhile", () => {
  test("columns from so many on open as far down, side by side or centred", () => {
    const open = withPlacement(1, () => ({
      columns: { allowed: anyFrom(3) },
      gap: { allowed: anyFrom(12) },
    }));
    expect(lifted("place.1.columns", open).placements[1]!.columns.allowed).toEqual(anyFrom(1));
    expect(lifted("place.1.gap", open).placements[1]!.gap.allowed).toEqual(anyFrom(2));
  });

  test("a side's own range is no concern of a panel that is centred by now", () => {
    const centred = withMargins(2, { sides: { kind: "centred", least: 3 } });
    expect(lifted("place.2.margins.left", centred)).toStrictEqual(centred);
  });

  test("the ease of a cord is no concern of a cable", () => {
    const changed = withMotif("plait", () => ({ kind: "cable" }));
    expect(lifted("motifs.plait.ease", changed)).toStrictEqual(changed);
  });
});

test.each([
  [only(4), "4"],
  [only(2, 3), "2 or 3"],
  [only(2, 3, 4), "2 to 4"],
  [only(2, 4, 8), "2, 4 or 8"],
  [only(-2, -1, 0), "-2 to 0"],
  [only(), "none"],
  [anyFrom(5), "5 or more"],
])("what is allowed is said in words: %j is %s", (allowed, words) => {
  expect(inWords(allowed)).toBe(words);
});

test.each([
  ["whole", "whole at waist"],
  ["half", "half at waist"],
  [{ rows: 3 }, "3 rows into its repeat at waist"],
  [{ rows: 1 }, "1 row into its repeat at waist"],
] as const)("a meeting is said in words: %j is %s", (at, words) => {
  expect(meetingInWords({ mark: "waist", at })).toBe(words);
});
