import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { gaugeRange } from "../../../src/cloth/gauge-range.ts";
import {
  allowedValues,
  countings,
  type FittedSegment,
  type Look,
  looksOf,
  makeLook,
  meanEaseAway,
  pickupsFor,
  valuesOf,
} from "../../../src/fit/looks.ts";
import { anyFrom, only } from "../../../src/garment/allowed.ts";
import type { CordMotif, Motif, Quantity } from "../../../src/motif/motif.ts";
import type { Segment } from "../../../src/motif/segments.ts";
import { motifWritten } from "./check/support/motif-written.ts";
import { gauge, trace } from "./support/plain-parts.ts";

const quantity = (name: string, changes: Partial<Quantity> = {}): Quantity => ({
  name,
  unit: "rows",
  allowed: only(4),
  ...changes,
});

const none = { source: "0", path: [], tree: { kind: "number", value: 0 } } as const;

const cord = (changes: Partial<CordMotif> = {}): CordMotif => ({
  kind: "cord",
  name: "plait",
  path: [],
  quantities: [],
  lead: none,
  repeat: none,
  rules: [],
  strands: [],
  folded: [],
  order: [],
  ease: { from: -0.05, to: 0.15, prefer: 0.02 },
  reserve: 0,
  markerEvery: 10,
  ...changes,
});

const segment = (needles: number, rows: number, changes: Partial<Segment> = {}): Segment => ({
  name: "run",
  needles,
  rows,
  climbs: 0,
  ...changes,
});

/** A stretch counted so, as far as its ease matters. */
const eased = (ease: number, changes: Partial<FittedSegment> = {}): FittedSegment => ({
  ...segment(1, 1),
  spanMm: 5,
  pickup: 1,
  ease,
  ...changes,
});

const pickups = (ways: readonly (readonly FittedSegment[])[]): readonly (readonly number[])[] =>
  ways.map((way) => way.map(({ pickup }) => pickup));

describe("counts over a span", () => {
  test("are those whose ease keeps its limits, both limits allowed", () => {
    const over = (from: number, to: number) =>
      pickupsFor(100, 10, { from, to }).map(({ pickup, ease }) => [pickup, Number(ease.toFixed(9))]);
    // 100 mm of path take 10 stitches of 10 mm without slack; each one more is 10 %.
    expect(over(-0.05, 0.15)).toEqual([
      [10, 0],
      [11, 0.1],
    ]);
    expect(over(-0.1, 0.2)).toEqual([
      [9, -0.1],
      [10, 0],
      [11, 0.1],
      [12, 0.2],
    ]);
    expect(over(0.01, 0.09)).toEqual([]);
  });

  test("are at least one stitch, however short the path", () => {
    expect(pickupsFor(4, 10, { from: -1, to: 2 })).toEqual([{ pickup: 1, ease: 1.5 }]);
  });

  test("are the same as when every count is tried", () => {
    const limits = fc.record({
      from: fc.integer({ min: -50, max: 0 }).map((percent) => percent / 100),
      to: fc.integer({ min: 0, max: 60 }).map((percent) => percent / 100),
    });
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 90 }),
        fc.integer({ min: 2, max: 9 }),
        limits,
        (span, each, ease) => {
          const fitting = Array.from({ length: 200 }, (_, index) => index + 1).filter((pickup) => {
            const slack = (pickup * each - span) / span;
            return slack >= ease.from - 1e-9 && slack <= ease.to + 1e-9;
          });
          expect(pickupsFor(span, each, ease).map(({ pickup }) => pickup)).toEqual(fitting);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe("how far the ease is from the preferred one", () => {
  test("is the mean over the distinct segments, in percentage points, whichever side it is on", () => {
    // 2 points short and 5 points over: 3.5 on average.
    expect(meanEaseAway([eased(0), eased(0.07)], { from: -1, to: 1, prefer: 0.02 })).toBeCloseTo(3.5, 9);
  });

  test("leaves standing loops out", () => {
    const loop = eased(3, { fixed: 9 });
    expect(meanEaseAway([eased(0.05), loop], { from: -1, to: 1, prefer: 0.02 })).toBeCloseTo(3, 9);
    expect(meanEaseAway([loop], { from: -1, to: 1, prefer: 0.02 })).toBe(0);
  });

  test("is nothing where no preference is stated, and nothing where nothing is counted", () => {
    expect(meanEaseAway([eased(0.1)], { from: -1, to: 1 })).toBe(0);
    expect(meanEaseAway([], { from: -1, to: 1, prefer: 0.02 })).toBe(0);
  });
});

describe("the values of a motif", () => {
  const rule = (source: string): CordMotif["rules"] =>
    motifWritten({ like: "crossed cord", rules: [source] }).rules;

  test("are all combinations of what its quantities may be", () => {
    const motif = cord({
      quantities: [
        quantity("interval", { allowed: only(2, 4) }),
        quantity("spread", { allowed: only(1, 3, 5) }),
      ],
    });
    const pairs = valuesOf(motif).map((values) => [...values.entries()].flat());
    expect(pairs).toEqual(
      [
        [2, 1],
        [2, 3],
        [2, 5],
        [4, 1],
        [4, 3],
        [4, 5],
      ].map(([interval, spread]) => ["interval", interval, "spread", spread]),
    );
  });

  test("keep its rules", () => {
    const motif = cord({
      quantities: [
        quantity("interval", { allowed: only(2, 4) }),
        quantity("spread", { allowed: only(1, 3, 5) }),
      ],
      rules: rule("spread <= interval"),
    });
    expect(valuesOf(motif).map((values) => [...values.values()])).toEqual([
      [2, 1],
      [4, 1],
      [4, 3],
    ]);
  });

  test("of a motif without quantities are one empty choice", () => {
    expect(valuesOf(cord())).toEqual([new Map()]);
  });

  test("of an open range go as far as any motif does, those of a list as far as it says", () => {
    expect(allowedValues(quantity("interval", { allowed: anyFrom(398) }))).toEqual([398, 399, 400]);
    expect(allowedValues(quantity("interval", { allowed: only(4, 900) }))).toEqual([4, 900]);
  });
});

describe("ways to count a cord", () => {
  const wide = cord({ ease: { from: -0.2, to: 0.2, prefer: 0.02 } });

  test("give each segment its path, its count and its ease", () => {
    // 4 needles of 3 mm and 4 rows of 4 mm: 20 mm of path, 4 stitches of 5 mm without slack; 5 are 25 % too many.
    expect(countings(cord(), [segment(4, 4)], gauge, 6, {})).toEqual([
      [{ ...segment(4, 4), spanMm: 20, pickup: 4, ease: 0 }],
    ]);
  });

  test("climb over what the strand passes over", () => {
    // 8 needles and 8 rows: 40 mm of path; over 15 mm of cord 2 x (hypot(20, 15) - 20) = 10 mm more: 10 stitches.
    const thick = { ...gauge, cord: { ...gauge.cord!, thicknessMm: 15 } };
    const [[one] = []] = countings(
      cord({ ease: { from: 0, to: 0 } }),
      [segment(8, 8, { climbs: 1 })],
      thick,
      6,
      {},
    );
    expect([one!.spanMm, one!.pickup, one!.ease]).toEqual([50, 10, 0]);
  });

  test("are nearest to the preferred ease first, so many of them as are kept", () => {
    const both = [segment(8, 8), segment(6, 6)];
    // 40 mm: 7, 8 or 9 stitches are -12.5, 0 or 12.5 %; 30 mm: 5, 6 or 7 are -16.7, 0 or 16.7 %. Away from 2 %:
    // 2 for 8, 10.5 for 9, 14.5 for 7 and 2 for 6, 14.7 for 7, 18.7 for 5.
    expect(pickups(countings(wide, both, gauge, 6, {}))).toEqual([
      [8, 6],
      [9, 6],
      [7, 6],
      [8, 7],
      [8, 5],
      [9, 7],
    ]);
    expect(countings(wide, both, gauge, 99, {})).toHaveLength(9);
    expect(pickups(countings(wide, both, gauge, 2, {}))).toEqual([
      [8, 6],
      [9, 6],
    ]);
  });

  test("are none where one segment cannot be counted, or there is no cord to count", () => {
    // 2.5 rows more or less do not help a path of 5 x 1.5 = 7.5 mm: 1 stitch is -33 %, 2 are +33 %.
    expect(countings(cord(), [segment(4, 4), segment(2.5, 0)], gauge, 6, {})).toEqual([]);
    expect(countings(cord(), [segment(4, 4)], { ground: gauge.ground }, 6, {})).toEqual([]);
  });

  test("of a motif that is not laid anywhere are one, of nothing", () => {
    expect(countings(cord(), [], gauge, 6, {})).toEqual([[]]);
  });

  test("take what is fixed for a loop, whatever its ease", () => {
    // 20 mm of path and 10 stitches of 5 mm: 150 %.
    expect(countings(cord(), [segment(4, 4, { fixed: 10 })], gauge, 6, {})).toEqual([
      [{ ...segment(4, 4, { fixed: 10 }), spanMm: 20, pickup: 10, ease: 1.5 }],
    ]);
  });

  test("keep loops below what a child can be caught in", () => {
    // 20 mm of cloth and 50 mm of cord are 70 mm round.
    const loop = segment(4, 4, { fixed: 10 });
    expect(countings(cord(), [loop], gauge, 6, { mostLoopMm: 70 })).toHaveLength(1);
    expect(countings(cord(), [loop], gauge, 6, { mostLoopMm: 69 })).toEqual([]);
    // 8, 9 or 7 stitches over 40 mm are 80, 85 or 75 mm round.
    expect(pickups(countings(wide, [segment(8, 8)], gauge, 6, { mostLoopMm: 80 }))).toEqual([[8], [7]]);
  });

  test("keep their limits at every gauge of a range", () => {
    const over = gaugeRange(
      {
        ground: { ...gauge.ground, within: { stitches: 0, rows: 0 } },
        cord: { ...gauge.cord!, within: 0.1 },
      },
      1,
    );
    // A cord stitch is 5 / 1.1 to 5 / 0.9 mm, 4.55 to 5.56: 8 of them over 40 mm are -9 to +11 %, 9 are +2 to +25 %.
    expect(pickups(countings(wide, [segment(8, 8)], gauge, 6, { over }))).toEqual([[8]]);
    expect(pickups(countings(wide, [segment(8, 8)], gauge, 6, {}))).toEqual([[8], [9], [7]]);
  });

  test("keep their limits where the thickness of the cord takes some of the slack", () => {
    const over = gaugeRange({
      ground: { ...gauge.ground, within: { stitches: 0, rows: 0 } },
      cord: { ...gauge.cord!, within: 0 },
    });
    const thick = { ...gauge, cord: { ...gauge.cord!, thicknessMm: 15 } };
    const exact = cord({ ease: { from: 0, to: 0 } });
    expect(pickups(countings(exact, [segment(8, 8, { climbs: 1 })], thick, 6, { over }))).toEqual([[10]]);
  });

  test("are those that somebody else wants to keep, told how many and how far each is away", () => {
    const asked: unknown[] = [];
    const ways = countings(wide, [segment(8, 8), segment(6, 6)], gauge, 3, {}, (all, keep, away) => {
      asked.push([all.length, keep, Number(away(all[0]!).toFixed(9))]);
      return all.slice(-1);
    });
    // First 3 ways, the first 7 stitches (14.5 away); then those of 9 with 5, 6 or 7: (10.5 + 18.67) / 2 away.
    expect(asked).toEqual([
      [3, 3, 14.5],
      [3, 3, Number(((10.5 + 56 / 3) / 2).toFixed(9))],
    ]);
    expect(pickups(ways)).toEqual([[9, 7]]);
  });

  test("lose none of the best by keeping only the best so far", () => {
    const lengths = fc.array(fc.integer({ min: 2, max: 12 }), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(lengths, fc.integer({ min: 1, max: 5 }), (all, keep) => {
        const distinct = all.map((length) => segment(length, length));
        const costs = (most: number): readonly number[] =>
          countings(wide, distinct, gauge, most, {}).map((way) => meanEaseAway(way, wide.ease));
        const best = [...costs(1000)].sort((a, b) => a - b).slice(0, keep);
        const kept = costs(keep);
        expect(kept).toHaveLength(best.length);
        for (const [index, cost] of kept.entries()) expect(cost).toBeCloseTo(best[index]!, 9);
      }),
      { numRuns: 30 },
    );
  });
});

describe("a look", () => {
  const motif = cord({
    quantities: [
      quantity("interval", { prefer: 4 }),
      quantity("turns", { unit: "strands", prefer: 2 }),
      quantity("free"),
    ],
  });
  const values = new Map([
    ["interval", 7],
    ["turns", 2],
    ["free", 9],
  ]);

  test("gives up what is away from what is preferred, each term at its weight", () => {
    const look = makeLook(motif, values, trace(), [eased(0.06)], { interval: 2 });
    // 4 points of ease at 1 each, 3 rows at 2 each; the turns are as preferred and nothing is asked of the third.
    expect(
      look.terms.map(({ term, amount, unit, weight, motif: of }) => [
        term,
        Number(amount.toFixed(9)),
        unit,
        weight,
        of,
      ]),
    ).toEqual([
      ["ease", 4, "percentage points", 1, "plait"],
      ["interval", 3, "rows", 2, "plait"],
    ]);
    expect(look.cost).toBeCloseTo(4 + 6, 9);
    expect(look).toMatchObject({ motif, values, segments: [eased(0.06)] });
    expect(look).not.toHaveProperty("footing");
  });

  test("gives up nothing where all is as preferred", () => {
    const plain = new Map([...values, ["interval", 4]]);
    expect(makeLook(motif, plain, trace(), [eased(0.02)], {})).toMatchObject({ terms: [], cost: 0 });
  });

  test("of what is no cord has no ease", () => {
    const cable = { ...motif, kind: "cable", drawIn: 0 } as unknown as Motif;
    expect(makeLook(cable, values, trace(), [], {}).terms.map(({ term }) => term)).toEqual(["interval"]);
  });
});

describe("the looks of a motif", () => {
  const plait = (changes: object): Motif => motifWritten({ like: "crossed cord", ...changes });
  const shown = (looks: readonly Look[]): readonly string[] =>
    looks.map(
      ({ values, segments }) => `${[...values.values()].join("x")}: ${segments.map(({ pickup }) => pickup)}`,
    );

  test("are one for each way to count each set of values, for a crossed cord in a gauge of 3, 4 and 5", () => {
    const motif = plait({
      interval: { allow: [4, 7], prefer: 4 },
      spread: { allow: [4, 5], prefer: 4 },
      ease: { from: "-8 %", to: "8 %", prefer: "0 %" },
    });
    // Lead-in `spread - 1` needles and crossing `2 spread - 1` needles over so many rows, path in mm and stitches of 5 mm:
    // 4 rows: 3 needles 18.36 (4 are +8.9 %), so none at spread 4; 4 needles 20 (4), 9 needles 31.38 (6: -4.4 %).
    // 7 rows: 3 needles 29.41 (6: +2 %), 7 needles 35 (7); 4 needles 30.46 (6: -1.5 %), 9 needles 38.9 (8: +2.8 %).
    expect(shown(looksOf(motif, gauge, {}, 6))).toEqual(["4x5: 4,6", "7x4: 6,7", "7x5: 6,8"]);
    const [first] = looksOf(motif, gauge, {}, 6);
    expect(first!.trace).toMatchObject({ leadRows: 4, repeatRows: 8, reach: { left: 5, right: 5 } });
    // The mean of 0 and 4.39 points, and a needle of spread at 1.2.
    expect(first!.cost).toBeCloseTo((100 * (1 - 30 / Math.hypot(27, 16))) / 2 + 1.2, 9);
  });

  test("are as many of one set of values as are kept", () => {
    const motif = plait({ interval: 8, spread: 9, ease: { from: "-20 %", to: "20 %", prefer: "0 %" } });
    expect(looksOf(motif, gauge, {}, 3)).toHaveLength(3);
    expect(looksOf(motif, gauge, {}, 1)).toHaveLength(1);
  });

  test("keep the limits of loops and the ways that somebody else wants", () => {
    const motif = plait({ interval: 8, spread: 9, ease: { from: "-20 %", to: "20 %", prefer: "0 %" } });
    // The lead-in of 8 needles and 8 rows is 40 mm of cloth and 40 mm of cord round.
    expect(looksOf(motif, gauge, {}, 3, { mostLoopMm: 60 })).toEqual([]);
    const last = looksOf(motif, gauge, {}, 1, {}, ({ leadRows }) => {
      expect(leadRows).toBe(8);
      return (ways) => ways.slice(-1);
    });
    expect(shown(last)).not.toEqual(shown(looksOf(motif, gauge, {}, 1)));
  });

  test("leave out values with which the motif cannot be worked", () => {
    const motif = motifWritten({
      kind: "cord",
      quantities: { half: { unit: "rows", allow: [4, 6] } },
      lead: 0,
      repeat: "half",
      strands: {
        one: {
          start: [1, 0],
          repeat: [
            [1, "half / 2"],
            [1, "half"],
          ],
        },
      },
      ease: { from: "-40 %", to: "60 %" },
    });
    // Half of five rows is no row.
    const quantities = motif.quantities.map((one) => ({ ...one, allowed: only(4, 5, 6) }));
    expect(looksOf({ ...motif, quantities }, gauge, {}, 1).map(({ values }) => values.get("half"))).toEqual([
      4, 6,
    ]);
  });

  test("of a cable are one for each set of values, without counts", () => {
    const cable = motifWritten({ like: "transferred cable", interval: { allow: [4, 6] } });
    const looks = looksOf(cable, { ground: gauge.ground }, {}, 6);
    expect(looks.map(({ values, segments }) => [values.get("interval"), segments])).toEqual([
      [4, []],
      [6, []],
    ]);
  });
});
