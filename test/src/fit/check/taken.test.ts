import { beforeAll, describe, expect, test } from "vitest";
import { amountTaken, countTaken, type Taken } from "../../../../src/fit/check/taken.ts";
import type { FittedPart, FittedPlacement } from "../../../../src/fit/fit.ts";
import type { Garment, Supply, Yarns } from "../../../../src/garment/garment.ts";
import {
  fitOf,
  lookWith,
  placed,
  section,
  straight,
  stretch,
  swing,
  written,
} from "./support/laid-by-hand.ts";

/** A garment of one or more such motifs, the cords with no reserve unless it is given. */
const garmentWith = (motifs: Readonly<Record<string, object>>, more: object = {}): Garment =>
  written(
    motifs,
    Object.keys(motifs).map((motif) => ({ motif })),
    more,
  );

const motifOf = (garment: Garment, name: string) => garment.motifs.find((motif) => motif.name === name)!;

describe("counting what a garment takes", () => {
  /** A lead-in of 3 cord stitches and crossings of 5 with two arms of one cord: spread 3, interval 4. */
  let plait: Garment;
  const laid = (repeats: number, more: Partial<FittedPlacement> = {}): FittedPlacement =>
    placed(
      [
        section(
          lookWith(motifOf(plait, "plait"), { interval: 4, spread: 3 }, [stretch(2, 4, 3), stretch(5, 4, 5)]),
          repeats,
        ),
      ],
      more,
    );

  beforeAll(() => {
    plait = garmentWith({ plait: { like: "crossed cord", reserve: "15 %" } });
  });

  test("takes every stitch of every row, all pieces as often as they are made", () => {
    const twice: Garment = { ...plait, pieces: plait.pieces.map((piece) => ({ ...piece, make: 2 })) };
    // 20 needles in each of 6 rows; what stands in work after the last row is bound off.
    const piece = { ...straight(6, 10), left: [10, 10, 10, 10, 10, 10, 99] };
    expect(countTaken(plait, fitOf(plait, [], [piece]), true)).toEqual({
      groundStitches: 120,
      cordStitches: 0,
      cords: 0,
    });
    expect(countTaken(twice, fitOf(twice, [], [piece]), true).groundStitches).toBe(240);
    expect(countTaken(twice, fitOf(twice, [], [piece, piece]), true).groundStitches).toBe(480);
  });

  test("leaves out the opening of a neck, from the row on that it begins at", () => {
    const neck = { row: 4, left: [1, 2, 3], right: [4, 4, 5] };
    // Rows 4 and 5 have 5 and 6 stitches less than 20.
    const fit = fitOf(plait, [], [straight(6, 10, { neck })]);
    expect(countTaken(plait, fit, true).groundStitches).toBe(6 * 20 - 5 - 6);
  });

  test("takes each cord with its reserve rounded up, two arms as one cord", () => {
    // An arm of 8 repeats: 1 to hang by, 3 of the lead-in and 16 crossings of 5, that is 84; both 168; 168 * 1.15 = 193.2.
    const fit = fitOf(plait, [laid(8)], []);
    expect(countTaken(plait, fit, false)).toEqual({ groundStitches: 0, cordStitches: 194, cords: 1 });
    expect(countTaken(plait, fit, true)).toEqual({ groundStitches: 0, cordStitches: 194, cords: 1 });
    const [piece] = plait.pieces;
    const twice: Garment = { ...plait, pieces: [{ ...piece!, make: 2 }] };
    expect(countTaken(twice, fitOf(twice, [laid(8, { columns: 3 }), laid(0)], []), false)).toMatchObject({
      // Of no repeat: both arms of 1 + 3 stitches; 8 * 1.15 = 9.2.
      cordStitches: 2 * (3 * 194 + 10),
      cords: 2 * (3 + 1),
    });
  });

  test("does not round up what only comes to a whole number by the last digit of a sum", () => {
    const cord = garmentWith({ cord: { ...swing, reserve: "10 %" } });
    // 50 * 1.1 is 55.00000000000001 as numbers are stored.
    const look = lookWith(motifOf(cord, "cord"), { interval: 3, spread: 2 }, [stretch(3, 3, 7)]);
    const taken = (segments = look.segments) =>
      countTaken(cord, fitOf(cord, [placed([section({ ...look, segments }, 1)])], []), false).cordStitches;
    expect(50 * 1.1).toBeGreaterThan(55);
    expect(taken([stretch(3, 3, 24.5)])).toBe(55);
    // 1 + 2 * 7 = 15, and 16.5 with its reserve.
    expect(taken()).toBe(17);
  });

  test("takes more for what is worked of a further repeat, column by column and strand by strand", () => {
    const part: FittedPart = { lastRow: 0, rows: 0, columns: [{ left: 1 }, { left: 2, right: 1 }] };
    const columns = { columns: 3, part };
    // A column of one repeat: both arms 1 + 3 + 2 * 5, that is 28; with one crossing more 33, with three 43.
    const all = countTaken(plait, fitOf(plait, [laid(1, columns)], []), true).cordStitches;
    expect(all).toBe(Math.ceil(33 * 1.15) + Math.ceil(43 * 1.15) + Math.ceil(28 * 1.15));
    const whole = countTaken(plait, fitOf(plait, [laid(1, columns)], []), false).cordStitches;
    expect(whole).toBe(3 * Math.ceil(28 * 1.15));
  });

  test("takes cord section by section, with the stretches between two of them", () => {
    const cord = garmentWith({ cord: { ...swing, reserve: "0 %" } });
    const motif = motifOf(cord, "cord");
    const sections = [
      section(lookWith(motif, { interval: 3, spread: 2 }, [stretch(3, 3, 3)]), 2),
      section(lookWith(motif, { interval: 4, spread: 4 }, [stretch(7, 4, 7)]), 1, [stretch(5, 4, 5)]),
    ];
    const part: FittedPart = { lastRow: 0, rows: 0, columns: [{ cord: 1 }] };
    // 1 to hang by, four of 3, one of 5 from section to section, one of 7; one of 7 more.
    const fit = fitOf(cord, [placed(sections, { part })], []);
    expect(countTaken(cord, fit, false).cordStitches).toBe(1 + 4 * 3 + 5 + 7);
    expect(countTaken(cord, fit, true).cordStitches).toBe(1 + 4 * 3 + 5 + 7 + 7);
  });

  test("tells no number where a stretch has no count", () => {
    const bare = laid(1);
    const fit = fitOf(
      plait,
      [{ ...bare, sections: [section(lookWith(motifOf(plait, "plait"), { interval: 4, spread: 3 }), 1)] }],
      [],
    );
    expect(countTaken(plait, fit, true).cordStitches).toBeNaN();
  });

  test("takes a cord for each strand that is no arm of another, in the motif that a placement names", () => {
    const arms = { start: [1, 0], repeat: [[1, "interval"]] };
    const garment = garmentWith({
      band: { kind: "band", stitches: 4, repeat: 4 },
      three: {
        kind: "cord",
        quantities: { interval: { unit: "rows", allow: 4 } },
        lead: 0,
        repeat: "interval",
        strands: {
          loose: { ...arms, start: [5, 0], repeat: [[5, "interval"]] },
          one: arms,
          other: { ...arms, start: [-1, 0], repeat: [[-1, "interval"]] },
        },
        folded: ["one", "other"],
        reserve: "0 %",
      },
    });
    const look = lookWith(motifOf(garment, "three"), { interval: 4 }, [stretch(0, 4, 3)]);
    const band = placed([section(lookWith(motifOf(garment, "band"), {}), 5)], { columns: 5 });
    // Two repeats: each strand 1 + 2 * 3, so that one cord has 7 stitches and the folded one 14.
    expect(countTaken(garment, fitOf(garment, [band, placed([section(look, 2)])], []), true)).toEqual({
      groundStitches: 0,
      cordStitches: 21,
      cords: 2,
    });
  });
});

/**
 * Yarn in one stitch of a ground of 2.1 stitches and 2.75 rows to the cm, whose counts are sure: `sqrt(Ks / S)` with
 * S = 5.775 stitches to the cm^2 and Ks from 21.6 less 3 % by 23.1 to 24.1, so that it is 2 cm, give or take.
 */
const loop = {
  least: Math.sqrt((21.6 * 0.97) / 5.775) / 100,
  about: Math.sqrt(23.1 / 5.775) / 100,
  most: Math.sqrt(24.1 / 5.775) / 100,
};

describe("what that comes to of a supply", () => {
  let garment: Garment;
  const taken: Taken = { groundStitches: 1000, cordStitches: 200, cords: 3 };
  const amount = (
    of: Supply["of"],
    unit: Supply["unit"],
    yarn: Yarns = {},
    count: Partial<Taken> = {},
  ): number => amountTaken({ ...garment, yarn }, { of, unit, amount: 1, path: [] }, { ...taken, ...count });

  beforeAll(() => {
    const cord = garmentWith({ cord: swing });
    garment = {
      ...cord,
      gauge: {
        ground: { stitches: 21, rows: 27.5, overMm: 100, within: { stitches: 0, rows: 0 } },
        cord: { needles: 3, stitches: 25, overMm: 100 },
      },
    };
  });

  test("of finished cord is its length, in metres", () => {
    // 200 cord stitches of 4 mm.
    expect(amount("cord", "m")).toBeCloseTo(0.8, 12);
    const { cord: _, ...gauge } = garment.gauge;
    expect(amountTaken({ ...garment, gauge }, { of: "cord", unit: "m", amount: 1, path: [] }, taken)).toBe(0);
  });

  /** The most that a stitch may take, and a tenth of what it most likely takes for waste. */
  const ground = 1000 * (loop.most + loop.about / 10);
  /** Three loops a tenth longer than the longest, and two stitches of 100 / 21 mm across; two tails of 20 cm a cord. */
  const cordYarn = 200 * (3 * loop.most * 1.1 + 2 * (0.1 / 21)) + 3 * 0.4;

  test("of yarn is the most that it may be, in metres", () => {
    expect(loop.about).toBe(0.02);
    expect(amount("ground yarn", "m")).toBeCloseTo(ground, 9);
    expect(amount("cord yarn", "m")).toBeCloseTo(cordYarn, 9);
    expect(amount("yarn", "m")).toBeCloseTo(ground + cordYarn, 9);
  });

  test("of yarn is told in grams by its count", () => {
    const yarn = { ground: { tex: 500 }, cord: { tex: 300 } };
    expect(amount("ground yarn", "g", yarn)).toBeCloseTo(0.5 * ground, 9);
    expect(amount("cord yarn", "g", yarn)).toBeCloseTo(0.3 * cordYarn, 9);
    expect(amount("yarn", "g", yarn)).toBeCloseTo(0.5 * ground + 0.3 * cordYarn, 9);
    expect(amount("ground yarn", "g")).toBeNaN();
  });

  test("of cord yarn is nothing where no cord is laid, tails included", () => {
    const none = { cordStitches: 0, cords: 0 };
    expect(amount("cord yarn", "m", {}, none)).toBe(0);
    expect(amount("yarn", "g", { ground: { tex: 500 } }, none)).toBeCloseTo(0.5 * ground, 9);
    const { cord: _, ...gauge } = garment.gauge;
    const supply: Supply = { of: "yarn", unit: "m", amount: 1, path: [] };
    expect(amountTaken({ ...garment, gauge }, supply, taken)).toBeCloseTo(ground, 9);
  });

  test("goes by the weight of a swatch where that leaves less room than the gauge", () => {
    // The gauge leaves 6.9 % of room: a swatch of 15 g, known to half a gram, leaves 6.7 %, and one of 14 g 7.1 %.
    expect((loop.most - loop.least) / loop.about).toBeCloseTo(0.069, 3);
    const weighed = (grams: number, tex?: number) => ({
      ground: { swatch: { stitches: 600, grams }, ...(tex && { tex }) },
    });
    // A stitch has 1 / 600 of it: 15.5 g at most, and 1.5 g for waste.
    expect(amount("ground yarn", "g", weighed(15))).toBeCloseTo((1000 * (15.5 + 1.5)) / 600, 9);
    expect(amount("ground yarn", "m", weighed(15, 500))).toBeCloseTo((1000 * (15.5 + 1.5)) / 600 / 0.5, 9);
    expect(amount("ground yarn", "g", weighed(14, 500))).toBeCloseTo(0.5 * ground, 9);
    expect(amount("ground yarn", "m", weighed(14))).toBeCloseTo(ground, 9);
  });

  test("goes by the weight of a piece of cord for the cord's own yarn", () => {
    const yarn = { cord: { tex: 300, swatch: { stitches: 400, grams: 40 } } };
    // A cord stitch takes at most 40.5 / 400 g, and the tails 3 * 0.4 m at 0.3 g a metre.
    expect(amount("cord yarn", "g", yarn)).toBeCloseTo((200 * 40.5) / 400 + 3 * 0.4 * 0.3, 9);
  });
});
