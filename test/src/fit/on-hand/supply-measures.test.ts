import { beforeAll, describe, expect, test } from "vitest";
import type { Candidate } from "../../../../src/fit/candidates.ts";
import type { Look } from "../../../../src/fit/looks.ts";
import { type SupplyMeasures, supplyMeasures } from "../../../../src/fit/on-hand/supply-measures.ts";
import type { Garment } from "../../../../src/garment/garment.ts";
import { readGarment } from "../../../../src/garment/read-garment.ts";
import { type Rates, ratesOf } from "../../../../src/on-hand/rates.ts";
import { garmentText } from "../../../support/garment-text.ts";
import { wedge } from "../../../support/growing-wedge.ts";

/**
 * A sleeve that is made twice, with a plait and a cable on it, a cuff with a plait, and a belt of 10 needles by 25 rows without a motif, made
 * three times. A cord stitch is 2.5 mm long.
 */
const garment = (onHand: string, more: string = ""): Garment =>
  readGarment(
    garmentText({
      gauge: `gauge:
  ground: { stitches: 20, rows: 25, over: 10 cm }
  cord: { needles: 3, stitches: 40, over: 10 cm }`,
      yarn: "yarn: { ground: { tex: 400 }, cord: { tex: 400 } }",
      onHand: onHand && `on hand: ${onHand}`,
      pieces: `pieces:
  sleeve: { make: 2, outline: [{ height: 0 cm, width: 20 cm }, { height: 20 cm, width: 20 cm }] }
  cuff: { outline: [{ height: 0 cm, width: 10 cm }, { height: 8 cm, width: 10 cm }] }
  belt: { make: 3, outline: [{ height: 0 cm, width: 5 cm }, { height: 10 cm, width: 5 cm }] }`,
      motifs:
        "motifs:\n  plait: { like: crossed cord }\n  rope: { like: transferred cable, interval: 6..10 }",
      place: `place:
  - { motif: plait, on: sleeve, from: cast-on, to: bind-off }
  - { motif: rope, on: sleeve, from: cast-on, to: bind-off }
  - { motif: plait, on: cuff, from: cast-on, to: bind-off }`,
      weights: more,
    }),
    "test.yaml",
  ).garment!;

const belts = 3 * 10 * 25;

const measuresOf = (file: Garment, ground = 0): SupplyMeasures =>
  supplyMeasures(file, file.onHand, () => ground)!;

/** A layout of a placement whose motif grows and so takes, in each of some columns, cords of so many cord stitches. */
const laid = (file: Garment, placement: number, used: readonly number[], columns = 1): Candidate =>
  ({
    place: { field: { placement: file.placements[placement] }, footing: {} },
    growth: { sections: [], terms: [], used },
    columns,
    repeats: 3,
  }) as unknown as Candidate;

test("nothing is read where all is on hand that it takes", () => {
  expect(supplyMeasures(garment(""), undefined, () => 0)).toBeUndefined();
});

describe("cord on hand", () => {
  let file: Garment;
  beforeAll(() => {
    file = garment("{ cord: 8 m }");
  });

  test("is taken by each layout of a cord, as often as its piece is made and with its reserve", () => {
    const [cord] = measuresOf(file, 500).measures;
    expect(cord!.name).toBe("cord on hand");
    // 100 and 15 %, 200 and 15 %: 345 cord stitches of 2.5 mm in a column, two columns, two sleeves.
    expect(cord!.ofLayout(laid(file, 0, [100, 200], 2))).toBeCloseTo(345 * 0.0025 * 2 * 2, 12);
    expect(cord!.ofLayout(laid(file, 1, [100, 200]))).toBe(0);
    expect(cord!.ofLook({} as Look)).toBe(0);
    expect(cord!.costEach).toBeUndefined();
    expect(cord).not.toHaveProperty("costEach");
  });

  test("is a limit, and no ground is read for it", () => {
    const { limits, ...read } = measuresOf(file);
    expect(limits).toMatchObject([{ measure: 0, name: "cord on hand", relation: "<=" }]);
    expect(limits[0]!.bound).toBeCloseTo(8, 6);
    // What rounding in two sums may differ by does not make it too little.
    expect(limits[0]!.bound).toBeGreaterThan(8);
    expect(read).toMatchObject({ readsCord: true, readsGround: false, lessIsBetter: true, costOfAll: 0 });
    expect(read.keepWays).toBeDefined();
    expect(read.ofGround(100)).toEqual([0]);
  });

  test("is told apart by what of a look takes cord", () => {
    expect(measuresOf(file).measures[0]!.lookPart).toBeDefined();
  });
});

describe("yarn of the ground on hand", () => {
  let file: Garment;
  let each: number;
  beforeAll(() => {
    file = garment("{ ground yarn: 900 m }");
    each = ratesOf(file, file.onHand!.supplies[0]!).groundStitch;
  });

  test("is taken by the layout that tells the piece's stitches, as often as the piece is made", () => {
    const [ground] = measuresOf(file, 500).measures;
    expect(ground!.name).toBe("ground yarn on hand");
    expect(ground!.ofLayout(laid(file, 1, []))).toBeCloseTo(2 * 500 * each, 9);
    expect(ground!.ofLayout(laid(file, 0, [100]))).toBeCloseTo(2 * 500 * each, 9);
    expect(ground).not.toHaveProperty("lookPart");
  });

  test("is what the pieces leave that carry no motif and stay as they are", () => {
    const { limits, ...read } = measuresOf(file);
    expect(limits).toMatchObject([{ measure: 0, name: "ground yarn on hand", relation: "<=" }]);
    expect(limits[0]!.bound).toBeCloseTo(900 - belts * each, 6);
    expect(read).toMatchObject({ readsCord: false, readsGround: true, lessIsBetter: true });
    expect(read).not.toHaveProperty("keepWays");
    expect(read.ofGround(100)).toEqual([100 * each]);
  });
});

describe("one yarn for cord and ground", () => {
  let file: Garment;
  let rates: Rates;
  beforeAll(() => {
    file = garment("{ cord: 8 m, yarn: 900 m }");
    rates = ratesOf(file, file.onHand!.supplies[1]!);
  });

  test("is taken by both, and by the tails of each cord", () => {
    const [, yarn] = measuresOf(file, 500).measures;
    // Two cords of 115 and 230 cord stitches in each of two columns.
    const cord = 2 * (345 * rates.cordStitch + 2 * rates.cord);
    expect(rates.cord).toBeCloseTo(0.4, 9);
    expect(yarn!.ofLayout(laid(file, 0, [100, 200], 2))).toBeCloseTo(
      2 * (cord + 500 * rates.groundStitch),
      9,
    );
  });

  test("is limited after what comes before it in the file", () => {
    const { limits, readsCord, readsGround, ofGround } = measuresOf(file);
    expect(limits.map(({ measure, name }) => [measure, name])).toEqual([
      [0, "cord on hand"],
      [1, "yarn on hand"],
    ]);
    expect([readsCord, readsGround]).toEqual([true, true]);
    expect(ofGround(10)).toEqual([0, 10 * rates.groundStitch]);
  });

  test("does not ask for the ground where none of it is taken", () => {
    const cordOnly = garment("{ cord: 8 m }");
    const ask = (): number => {
      throw new Error("asked");
    };
    const [cord] = supplyMeasures(cordOnly, cordOnly.onHand, ask)!.measures;
    expect(cord!.ofLayout(laid(cordOnly, 1, []))).toBe(0);
  });
});

describe("where as little as can be is to be left over", () => {
  let file: Garment;
  beforeAll(() => {
    file = garment("{ cord: 8 m, ground yarn: 900 m, prefer: least waste }", "weights: { waste: 0.4 }");
  });

  test("each unit that is taken saves its share of a percent", () => {
    const [cord, ground] = measuresOf(file).measures;
    // A metre of 8 is 12.5 %, of 900 a ninth of a percent.
    expect(cord!.costEach).toBeCloseTo(-0.4 * 12.5, 12);
    expect(ground!.costEach).toBeCloseTo(-0.4 / 9, 12);
  });

  test("taking nothing would cost all of both, less what the belts take", () => {
    const { costOfAll, lessIsBetter } = measuresOf(file);
    const each = ratesOf(file, file.onHand!.supplies[1]!).groundStitch;
    expect(costOfAll).toBeCloseTo(0.4 * 100 + 0.4 * (100 - (100 * belts * each) / 900), 9);
    expect(lessIsBetter).toBe(false);
  });

  test("ways to count a cord are kept that take as much as each other, and not only the least", () => {
    const { trace, segments } = wedge().tracks[0]!.looks[0]!;
    const more = segments.map((segment) => ({ ...segment, pickup: segment.pickup + 1 }));
    const away = (way: typeof segments): number => (way === segments ? 0 : 1);
    const kept = ({ keepWays }: SupplyMeasures) => keepWays!(trace)([segments, more], 1, away);
    expect(kept(measuresOf(file))).toEqual([segments, more]);
    expect(kept(measuresOf(garment("{ cord: 8 m }")))).toEqual([segments]);
  });
});
