import { beforeAll, describe, expect, test } from "vitest";
import { WorkEnded } from "../../../src/fit/allowance.ts";
import { type Extent, enumerate, fixedLoss, placedMotifs } from "../../../src/fit/enumerate.ts";
import { footingKey } from "../../../src/fit/footing.ts";
import { createKept, type Kept } from "../../../src/fit/kept.ts";
import { type Look, looksOf } from "../../../src/fit/looks.ts";
import type { Measure } from "../../../src/fit/measure.ts";
import { anyFrom, only } from "../../../src/garment/allowed.ts";
import type { Garment } from "../../../src/garment/garment.ts";
import type { CableMotif, Motif } from "../../../src/motif/motif.ts";
import { garmentOf } from "../../support/run-garment.ts";
import { threeByFour } from "../../support/three-by-four.ts";
import { mostHeld } from "./support/held.ts";
import { field, placement } from "./support/plain-parts.ts";

const panel = {
  outline: [
    { height: "0 cm", width: "12 cm" },
    { height: "16 cm", width: "12 cm" },
  ],
  marks: { middle: "8 cm" },
};

/** Stitches of 3 mm, rows of 4 mm, cord stitches of 5 mm; a panel of 40 needles and 40 rows. */
const written = (changes: object): Garment =>
  garmentOf({
    ...threeByFour,
    pieces: {
      panel,
    },
    motifs: { rails },
    place: [whole],
    ...changes,
  });

/** Two cords straight up, hung every 5 rows: 20 mm, 4 cord stitches without slack; 3 are 25 % too few. */
const rails = {
  kind: "cord",
  quantities: { apart: { unit: "needles", allow: [2, 3], prefer: 3 } },
  lead: 0,
  repeat: 5,
  strands: {
    left: { start: ["-apart", 0], repeat: [["-apart", 5]] },
    right: { start: ["apart", 0], repeat: [["apart", 5]] },
  },
  ease: { from: "-25 %", to: "25 %", prefer: "0 %" },
};

const whole = {
  motif: "rails",
  on: "panel",
  from: "cast-on",
  to: "bind-off",
  repeats: { allow: [7, 8], prefer: 7 },
};

/** A rope that crosses two stitches with two every 10 rows and draws in by half of them. */
const rope = {
  kind: "cable",
  quantities: {},
  cross: [2, 2],
  lead: 0,
  repeat: 10,
  crossings: { start: [0, 0], repeat: [[0, 10]] },
  "draw-in": "50 %",
};

const costs = (options: readonly { readonly cost: number }[]): readonly number[] =>
  options.map(({ cost }) => Number(cost.toFixed(9)));

describe("what can be chosen for one placement", () => {
  let garment: Garment;
  beforeAll(() => {
    garment = written({});
  });

  test("is every look, cheapest first, and every layout on each footing", () => {
    const { looks, layouts, matches, measures, limits } = enumerate(garment);
    // Counts of 4, 3 and 5 are 0, 25 and 25 points away; 2 needles instead of 3 are 1 away.
    expect(costs(looks[0]!)).toEqual([0, 1, 25, 25, 26, 26]);
    // 7 repeats of 5 rows leave 5 rows over, 8 leave none: half a row of balance, or one repeat too many; on both footings.
    expect(costs(layouts[0]!)).toEqual([0.5, 0.5, 1, 1]);
    expect(layouts[0]!.map(({ repeats, bottom, top }) => [repeats, bottom, top])).toEqual([
      [7, 2, 3],
      [7, 2, 3],
      [8, 0, 0],
      [8, 0, 0],
    ]);
    expect(new Set(layouts[0]!.map(({ footing }) => footingKey(footing)))).toEqual(
      new Set(["0+5n 3|3 x0", "0+5n 2|2 x0"]),
    );
    expect({ matches, measures, limits }).toEqual({ matches: garment.matches, measures: [], limits: [] });
  });

  test("is as many looks of the same values, and layouts of the same footing, as there are fits to tell apart", () => {
    const { looks, layouts } = enumerate(garment, { fits: 1 });
    expect(costs(looks[0]!)).toEqual([0, 1]);
    expect(costs(layouts[0]!)).toEqual([0.5, 0.5]);
  });

  test("is six of each unless more are asked for", () => {
    const many = written({ place: [{ ...whole, repeats: { allow: "1..8" } }] });
    const onEach = (extent: Extent): number => enumerate(many, extent).layouts[0]!.length / 2;
    expect([onEach({}), onEach({ fits: 8 })]).toEqual([6, 8]);
  });

  test("is no more than is needed to tell whether it fits, where only that is asked", () => {
    const longer = written({
      pieces: {
        panel: {
          outline: [
            { height: "0 cm", width: "12 cm" },
            { height: "16 cm", width: "12 cm" },
          ],
          grow: "2 cm",
        },
      },
    });
    const changes = (anyLayout: boolean) =>
      new Set(enumerate(longer, { fits: 99, anyLayout }).layouts[0]!.map(({ change }) => change)).size;
    expect([changes(true), changes(false)]).toEqual([1, 6]);
  });

  test("is the looks that somebody else makes, where somebody does", () => {
    const asked: unknown[] = [];
    const { looks, layouts } = enumerate(garment, {
      fits: 2,
      looksOf: (...args) => {
        asked.push(args);
        return looksOf(...args).filter(({ values }) => values.get("apart") === 2);
      },
    });
    expect(asked).toEqual([[garment.motifs[0], garment.gauge, garment.weights, 2, {}, undefined]]);
    expect(looks[0]!.every(({ values }) => values.get("apart") === 2)).toBe(true);
    expect(new Set(layouts[0]!.map(({ footing }) => footing.reach.left))).toEqual(new Set([2]));
  });
});

describe("amounts that are read beside the cost", () => {
  const measure = (changes: Partial<Measure> = {}): Measure => ({
    name: "cord",
    ofLook: () => 0,
    ofLayout: ({ repeats }) => repeats,
    ...changes,
  });
  /** The stitches of one look's first segment. */
  const pickupOf = ({ segments }: Pick<Look, "segments">): string => `${segments[0]!.pickup}`;

  test("are told by each layout", () => {
    const { layouts, measures } = enumerate(written({}), { measures: [measure()] });
    expect(measures).toHaveLength(1);
    expect(layouts[0]!.map(({ repeats, amounts }) => [repeats, ...amounts])).toEqual([
      [7, 7],
      [7, 7],
      [8, 8],
      [8, 8],
    ]);
  });

  test("set looks apart that differ in what is read of them, with layouts for each", () => {
    const { looks, layouts } = enumerate(written({ place: [{ ...whole, repeats: 8 }] }), {
      measures: [
        measure({
          lookPart: pickupOf,
          ofLayout: ({ place }) => (place.footing.counted!.segments[0]!.pickup as number) * 8,
        }),
        measure({ name: "apart", lookPart: ({ values }) => `${values.get("apart")} needles` }),
      ],
    });
    expect(looks[0]!.map(({ footing }) => footing!.goingOn).sort()).toEqual(
      [2, 3].flatMap((apart) => [3, 4, 5].map((pickup) => ` (${pickup}, ${apart} needles)`)).sort(),
    );
    for (const look of looks[0]!) expect(look.footing!.counted!.segments).toEqual(look.segments);
    expect(layouts[0]!.map(({ footing, amounts }) => `${footing.goingOn}: ${amounts[0]}`).sort()).toEqual(
      [2, 3]
        .flatMap((apart) => [3, 4, 5].map((pickup) => ` (${pickup}, ${apart} needles): ${8 * pickup}`))
        .sort(),
    );
  });

  test("leave looks on their own footing where nothing is read of them", () => {
    const { looks } = enumerate(written({}), { measures: [measure({ lookPart: () => "" })] });
    for (const look of looks[0]!) expect(look).not.toHaveProperty("footing");
  });

  test("name a part once that several of them read", () => {
    const { looks } = enumerate(written({}), {
      measures: [measure({ lookPart: pickupOf }), measure({ lookPart: pickupOf })],
    });
    expect(looks[0]![0]!.footing!.goingOn).toBe(" (4)");
  });
});

describe("several motifs and placements", () => {
  const two = () =>
    written({
      motifs: { rope, rails, spare: rails },
      place: [
        { ...whole, to: "middle", repeats: 3 },
        { motif: "rope", on: "panel", from: "middle", to: "bind-off", repeats: 1 },
      ],
    });

  test("are in the order of the file, and motifs that are not placed are left out", () => {
    const garment = two();
    expect(placedMotifs(garment).map(({ name }) => name)).toEqual(["rope", "rails"]);
    const { looks, layouts } = enumerate(garment);
    expect(looks.map(([first]) => first!.motif.name)).toEqual(["rope", "rails"]);
    expect(layouts.map(([first]) => [first!.field.placement.motif, first!.repeats])).toEqual([
      ["rails", 3],
      ["rope", 1],
    ]);
  });

  test("stand on a piece that is wide enough for what all of them draw in", () => {
    // The rope loses half of 4 stitches in each column: one needle more at each side, 21, also where only rails lie.
    const room = (needles: number): readonly boolean[] => {
      const garment = { ...two(), bed: { needles, carriage: "right" } as const };
      return enumerate(garment).layouts.map(({ length }) => length > 0);
    };
    expect([room(42), room(41)]).toEqual([
      [true, true],
      [false, false],
    ]);
  });

  test("draw in by column, where one of several numbers is chosen", () => {
    const garment = written({
      motifs: { rope },
      place: [{ motif: "rope", on: "panel", columns: { allow: [1, 3] }, gap: 2, repeats: 3 }],
    });
    // 3 columns lose 6 stitches: 3 needles more at each side of 20.
    const columns = (needles: number) =>
      enumerate({ ...garment, bed: { needles, carriage: "right" } }).layouts[0]!.map((one) => one.columns);
    expect([columns(46), columns(45)]).toEqual([[1, 3], [1]]);
  });
});

describe("what a placement loses whatever is chosen", () => {
  let cable: CableMotif;
  beforeAll(() => {
    cable = written({
      motifs: {
        rope: { ...rope, quantities: { wide: { unit: "stitches", allow: [2, 3] } }, cross: ["wide", 1] },
      },
      place: [{ motif: "rope", on: "panel", repeats: 3 }],
    }).motifs[0] as CableMotif;
  });
  const loss = (motif: Motif, columns = only(2)): number | undefined =>
    fixedLoss(field({ placement: placement({ columns: { allowed: columns } }) }), motif);
  const wide = (motif: CableMotif, ...values: number[]): CableMotif => ({
    ...motif,
    quantities: motif.quantities.map((one) => ({ ...one, allowed: only(...values) })),
  });

  test("is columns times stitches times their share", () => {
    // 2 columns of 3 + 1 stitches, half of them.
    expect(loss(wide(cable, 3))).toBe(4);
    expect(loss(wide(cable, 2))).toBe(3);
  });

  test("is nothing where nothing is drawn in", () => {
    expect(loss({ ...wide(cable, 3), drawIn: 0 })).toBe(0);
    expect(loss({ ...cable, drawIn: 0 }, anyFrom(1))).toBe(0);
    expect(loss(written({}).motifs[0]!)).toBe(0);
  });

  test("is not known where stitches or columns are to choose, or none can be worked", () => {
    expect(loss(cable)).toBeUndefined();
    expect(loss(wide(cable, 3), only(1, 2))).toBeUndefined();
    expect(loss(wide(cable, 3), anyFrom(2))).toBeUndefined();
    expect(loss(wide(cable, 0))).toBeUndefined();
    expect(loss(wide(cable, 0, 3))).toBeUndefined();
  });
});

describe("a garment for which nothing can be chosen", () => {
  test("is one whose placement lies where a child may have no cord", () => {
    const young = (part: string, motifs: object = { rails }, motif = "rails") =>
      enumerate(
        written({
          wearer: { age: 3 },
          motifs,
          pieces: {
            panel: {
              part,
              outline: [
                { height: "0 cm", width: "12 cm" },
                { height: "16 cm", width: "12 cm" },
              ],
            },
          },
          place: [{ motif, on: "panel", repeats: 3 }],
        }),
      ).layouts[0]!.length;
    expect(young("hood")).toBe(0);
    expect(young("sleeve")).toBeGreaterThan(0);
    expect(young("hood", { rope }, "rope")).toBeGreaterThan(0);
  });

  test("is one in which a piece without a motif cannot keep its length at every gauge", () => {
    const outline = [
      { height: "0 cm", width: "12 cm" },
      { height: "16 cm", width: "12 cm" },
    ];
    const layouts = (plain: object) =>
      enumerate(
        written({
          steady: true,
          pieces: { panel: { outline }, plain: { outline, ...plain } },
          place: [{ motif: "rails", on: "panel", repeats: 3 }],
          motifs: { rails: { ...rails, ease: { from: "-40 %", to: "60 %" } } },
        }),
      ).layouts[0]!.length;
    expect(layouts({ grow: "0 cm", shrink: "0 cm" })).toBe(0);
    expect(layouts({ grow: "5 cm", shrink: "5 cm" })).toBeGreaterThan(0);
  });
});

describe("a growing motif", () => {
  const growing = {
    ...rails,
    quantities: { apart: { unit: "needles", allow: [2, 3], prefer: 3, change: 1 } },
  };
  const garment = () =>
    written({ motifs: { rails: growing }, place: [{ motif: "rails", on: "panel", repeats: 4 }] });

  test("is one look for each track, and its layouts tell their sections", () => {
    const { looks, layouts } = enumerate(garment());
    // What its looks give up is told by the layouts.
    expect(looks[0]!.map(({ terms, cost }) => [terms, cost])).toEqual([[[], 0]]);
    const shown = layouts[0]!.map(({ sections }) =>
      sections!.map(({ look, repeats }) => `${repeats} of ${look.values.get("apart")}`).join(", "),
    );
    expect(shown[0]).toBe("4 of 3");
    expect(shown).toContain("1 of 2, 3 of 3");
  });

  test("grows in as many ways as are kept, or in one where only that it fits is asked", () => {
    const ways = (extent: Extent): number => enumerate(garment(), extent).layouts[0]!.length;
    expect([ways({ fits: 4 }), ways({ fits: 4, anyLayout: true })]).toEqual([4, 1]);
  });

  test("grows in every way of which none is better in all, where something else is read", () => {
    const ofLayout = (): number => 1;
    const { layouts } = enumerate(garment(), {
      fits: 9,
      measures: [{ name: "one", ofLook: () => 0, ofLayout }],
    });
    // Joins between 2 and 3 needles apart ease otherwise, but staying at 3 is best in everything: one way for each place.
    for (const { sections } of layouts[0]!) expect(sections!.map(({ repeats }) => repeats)).toEqual([4]);
  });
});

describe("cord on hand", () => {
  const garment = (more: object = {}) => written({ "on hand": { cord: "2 m" }, ...more });

  test("limits what the layouts take", () => {
    const { limits, measures, layouts, looks } = enumerate(garment());
    expect(limits).toMatchObject([{ measure: 0, relation: "<=" }]);
    expect(measures).toHaveLength(1);
    expect(looks[0]!.every(({ footing }) => footing?.counted !== undefined)).toBe(true);
    for (const { amounts } of layouts[0]!) expect(amounts[0]).toBeGreaterThan(0);
  });

  test("comes before what is measured beside it", () => {
    const { measures } = enumerate(garment(), {
      measures: [{ name: "one", ofLook: () => 0, ofLayout: () => 1 }],
    });
    expect(measures.map(({ name }) => name)).toEqual(["cord on hand", "one"]);
  });

  test("of which as little as can be is to be left over costs what is left", () => {
    const plain = enumerate(garment());
    const wasting = enumerate(garment({ "on hand": { cord: "2 m", prefer: "least waste" } }));
    const taken = (amount: number): number => (100 * amount) / 2;
    for (const { amounts, cost, terms } of wasting.layouts[0]!) {
      const own = terms.reduce((sum, term) => sum + term.cost, 0);
      // A tenth for each percent of 2 m.
      expect(cost).toBeCloseTo(own + 0.1 * (100 - taken(amounts[0]!)), 6);
    }
    expect(Math.min(...costs(plain.layouts[0]!))).toBe(0.5);
  });

  test("costs what is left once, however many placements there are", () => {
    const stacked = garment({
      "on hand": { cord: "2 m", prefer: "least waste" },
      place: [
        { ...whole, to: "middle", repeats: 3 },
        { ...whole, from: "middle", repeats: 3 },
      ],
    });
    const { layouts } = enumerate(stacked);
    const without = layouts.map(([first]) => {
      const own = first!.terms.reduce((sum, term) => sum + term.cost, 0);
      return first!.cost - own + (0.1 * 100 * first!.amounts[0]!) / 2;
    });
    expect(without[0]).toBeCloseTo(10, 6);
    expect(without[1]).toBeCloseTo(0, 6);
  });

  test("is counted where a motif grows", () => {
    const grown = garment({
      motifs: { rails: { ...rails, quantities: { apart: { unit: "needles", allow: [2, 3], change: 1 } } } },
      place: [{ motif: "rails", on: "panel", repeats: 3 }],
    });
    const { layouts } = enumerate(grown);
    for (const { amounts } of layouts[0]!) expect(amounts[0]).toBeGreaterThan(0);
  });

  test("keeps the ways to grow of which one is cheaper or takes less cord, or has less of anything that is read", () => {
    const ways = (onHand: object, measures: readonly Measure[] = []) => {
      const grown = written({
        "on hand": { cord: "4 m", ...onHand },
        motifs: {
          plait: {
            like: "crossed cord",
            interval: 4,
            spread: { allow: [3, 4], prefer: 3, change: 1 },
            ease: { from: "-35 %", to: "50 %", prefer: "0 %" },
          },
        },
        place: [{ motif: "plait", on: "panel", repeats: 2 }],
      });
      return enumerate(grown, { fits: 1, measures })
        .layouts[0]!.map(({ sections }) =>
          sections!.map(({ look, repeats }) => `${repeats} of ${look.values.get("spread")}`).join(", "),
        )
        .sort();
    };
    const [narrow, wider, narrower, wide] = ["2 of 3", "1 of 3, 1 of 4", "1 of 4, 1 of 3", "2 of 4"];
    // Cord in m, points of ease and needles of spread at 1.2: 0.23, 10.51 + 0; 0.255, 8.27 + 0.6; 0.28, 7.7 + 0.6;
    // 0.29, 7.13 + 1.2. The last costs 8.33 where the one before it costs 8.3 and takes less.
    expect(ways({})).toEqual([wider, narrower, narrow]);
    // Its ease is the best of all, though.
    expect(ways({}, [{ name: "one", ofLook: () => 0, ofLayout: () => 1 }])).toEqual([
      wider,
      narrower,
      narrow,
      wide,
    ]);
    // Where as little as can be is to be left over, more may be better.
    expect(ways({ prefer: "least waste" })).toEqual([wider, narrower, narrow, wide]);
  });

  test("is read of the piece where it is the ground's yarn, at each length that it may have", () => {
    const garments = garment({
      "on hand": { "ground yarn": "200 m" },
      yarn: { ground: { tex: 400 } },
      pieces: {
        panel: { ...panel, grow: "1 cm" },
      },
      place: [
        { ...whole, to: "middle", repeats: 3 },
        { ...whole, from: "middle", repeats: 3 },
      ],
    });
    const { layouts, limits } = enumerate(garments);
    expect(limits).toHaveLength(1);
    const byChange = new Map(layouts[0]!.map(({ change, amounts }) => [change, amounts[0]!]));
    // 40 needles on 40 rows, and one row of 40 more for each row of length.
    expect([...byChange.keys()].sort()).toEqual([0, 1, 2]);
    expect(byChange.get(2)! - byChange.get(1)!).toBeCloseTo(byChange.get(0)! / 40, 6);
  });
});

test("yarn of the ground on hand is counted on a piece with needles added for what is drawn in", () => {
  const stitches = (drawIn: string): number => {
    const { layouts } = enumerate(
      written({
        "on hand": { "ground yarn": "200 m" },
        yarn: { ground: { tex: 400 } },
        pieces: {
          panel: { ...panel, grow: "1 cm" },
        },
        motifs: { rope: { ...rope, "draw-in": drawIn } },
        place: [
          { motif: "rope", on: "panel", to: "middle", repeats: 1 },
          { motif: "rope", on: "panel", from: "middle", repeats: 1 },
        ],
      }),
    );
    return layouts[0]!.find(({ change }) => change === 0)!.amounts[0]!;
  };
  // Half of 4 stitches in each of the two: 4 lost, 2 needles more at each side of 20.
  expect(stitches("50 %") / stitches("0 %")).toBeCloseTo(44 / 40, 9);
});

describe("what was worked out before", () => {
  function keeping() {
    const asked: string[] = [];
    const inner = createKept();
    const made: string[] = [];
    const kept: Kept = (of, make) => {
      asked.push(of);
      return inner(of, () => {
        made.push(of);
        return make();
      });
    };
    return { kept, asked, made };
  }

  test("is taken again, with the motifs and fields of the garment as it is now", () => {
    const { kept, asked, made } = keeping();
    const [first, again] = [written({}), written({})];
    const once = enumerate(first, { kept });
    // The looks of the motif, and layouts on two footings.
    expect(made.map((of) => of.split(" ")[0])).toEqual(["looks", "layouts", "layouts"]);
    const twice = enumerate(again, { kept });
    expect([asked.length, made.length]).toEqual([6, 3]);
    expect(twice).toEqual(once);
    for (const look of twice.looks[0]!) expect(look.motif).toBe(again.motifs[0]);
    for (const layout of twice.layouts[0]!) expect(layout.field.placement).toBe(again.placements[0]);
  });

  test("is not taken where the gauge, the weights, the bed, the number of fits or the placement is another", () => {
    const { kept, made } = keeping();
    const garment = written({});
    enumerate(garment, { kept });
    const anew = (of: Garment, extent: Extent = {}): number => {
      const before = made.length;
      enumerate(of, { kept, ...extent });
      return made.length - before;
    };
    const { ground } = garment.gauge;
    expect(anew({ ...garment, gauge: { ...garment.gauge, ground: { ...ground, rows: 16 } } })).toBe(3);
    expect(anew({ ...garment, weights: { length: 1 } })).toBe(3);
    expect(anew({ ...garment, bed: { ...garment.bed, needles: 90 } })).toBe(2);
    expect(anew(garment, { fits: 2 })).toBe(3);
    expect(anew(garment, { anyLayout: true })).toBe(2);
    expect(
      anew({ ...garment, placements: garment.placements.map((one) => ({ ...one, mirror: true })) }),
    ).toBe(2);
    expect(anew(garment)).toBe(0);
  });

  test("is not taken where amounts are read, nor are looks that somebody else makes", () => {
    const { kept, asked } = keeping();
    enumerate(written({}), { kept, measures: [{ name: "one", ofLook: () => 0, ofLayout: () => 1 }] });
    expect(asked.map((of) => of.split(" ")[0])).toEqual(["looks"]);
    asked.length = 0;
    enumerate(written({}), { kept, looksOf: (...args) => looksOf(...args) });
    expect(asked.map((of) => of.split(" ")[0])).toEqual(["layouts", "layouts"]);
    asked.length = 0;
    enumerate(written({ "on hand": { cord: "2 m" } }), { kept });
    expect(asked).toEqual([]);
  });

  test("depends on what is drawn in beside, and by the motif itself", () => {
    const { kept, made } = keeping();
    const garment = written({
      motifs: { rope, rails },
      place: [
        { ...whole, to: "middle", repeats: 3 },
        { motif: "rope", on: "panel", from: "middle", to: "bind-off", repeats: 1 },
      ],
    });
    enumerate(garment, { kept });
    made.length = 0;
    const tighter = garment.motifs.map((motif) =>
      motif.kind === "cable" ? { ...motif, drawIn: 0.9 } : motif,
    );
    enumerate({ ...garment, motifs: tighter }, { kept });
    expect(made.map((of) => of.split(" ")[0])).toEqual(["looks", "layouts", "layouts", "layouts"]);
  });

  test("is held in memory like what is made anew", () => {
    const garment = written({});
    const kept: Kept = () => new Array(mostHeld() + 1);
    expect(() => enumerate(garment, { kept })).toThrow(WorkEnded);
  });
});
