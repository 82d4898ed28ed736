import { beforeAll, describe, expect, test } from "vitest";
import { checkLook, checkStretches, checkValues } from "../../../../src/fit/check/check-look.ts";
import type { FittedSegment } from "../../../../src/fit/looks.ts";
import type { Garment } from "../../../../src/garment/garment.ts";
import type { BandMotif, CordMotif } from "../../../../src/motif/motif.ts";
import { lookWith, section, stretch, swing, written } from "./support/laid-by-hand.ts";

let garment: Garment;
let motif: CordMotif;

beforeAll(() => {
  garment = written({ swing: { ...swing, rules: ["spread <= interval"] } });
  motif = garment.motifs[0] as CordMotif;
});

/** From 2 needles left to 2 right of the centre are 3 needles across, so with an interval of 3 a stretch is 15 mm. */
const look = (segments: readonly FittedSegment[], own: Partial<CordMotif> = {}) =>
  lookWith({ ...motif, ...own }, { interval: 3, spread: 2 }, segments);

/** What is found of the first stretch; where one is wrong, so are the three others of two repeats. */
function firstFound(
  segment: FittedSegment,
  own: Partial<CordMotif> = {},
  cord: Partial<NonNullable<Garment["gauge"]["cord"]>> = {},
): readonly string[] {
  const gauge = { ...garment.gauge, cord: { ...garment.gauge.cord!, ...cord } };
  const found = checkLook({ ...garment, gauge }, look([segment], own));
  return found.filter(({ rule }) => rule === "swing, cord, row 3").map((one) => one.found);
}

describe("the independent check of a look's values", () => {
  const valuesFound = (values: Readonly<Record<string, number>>) => checkValues(lookWith(motif, values));

  test("finds nothing where each is allowed and the rules are kept", () => {
    expect(valuesFound({ interval: 3, spread: 3 })).toEqual([]);
    expect(valuesFound({ interval: 4, spread: 2 })).toEqual([]);
  });

  test("finds each that is not allowed, or that there is none of", () => {
    expect(valuesFound({ interval: 5, spread: 1 })).toEqual([
      { rule: "swing: interval", found: "5 is not allowed" },
      { rule: "swing: spread", found: "1 is not allowed" },
    ]);
    expect(valuesFound({ interval: 3 })[0]).toEqual({
      rule: "swing: spread",
      found: "NaN is not allowed",
    });
  });

  test("finds a rule that is not kept", () => {
    expect(valuesFound({ interval: 3, spread: 4 })).toEqual([
      { rule: "swing: spread <= interval", found: "is not kept" },
    ]);
  });

  test("is part of the check of a look, whose counts are looked at too", () => {
    const found = checkLook(garment, lookWith(motif, { interval: 5, spread: 2 }));
    expect(found[0]).toEqual({ rule: "swing: interval", found: "5 is not allowed" });
    expect(found[1]).toEqual({
      rule: "swing, cord, row 5",
      found: "no count for 3 needles across and 5 rows up",
    });
  });
});

describe("the independent check of a band", () => {
  const bandFound = (stitches: number, repeat: number, own: Partial<BandMotif>) => {
    const quantities = {
      wide: { unit: "stitches", allow: "2..30" },
      high: { unit: "rows", allow: "2..30" },
    };
    const [band] = written({ leaves: { kind: "band", quantities, stitches: "wide", repeat: "high" } }).motifs;
    const leaves = { ...(band as BandMotif), ...own };
    return checkLook(garment, lookWith(leaves, { wide: stitches, high: repeat }));
  };

  test("finds stitches that do not divide its card", () => {
    expect(bandFound(12, 5, { card: 24 })).toEqual([]);
    expect(bandFound(9, 5, {})).toEqual([]);
    expect(bandFound(9, 5, { card: 24 })).toEqual([
      { rule: "leaves", found: "9 stitches do not divide a card of 24" },
    ]);
  });

  test("finds colours that change where the carriage is away from their yarns", () => {
    expect(bandFound(12, 6, { colours: 2 })).toEqual([]);
    expect(bandFound(12, 5, { colours: 1 })).toEqual([]);
    expect(bandFound(12, 5, { colours: 2 })).toEqual([
      { rule: "leaves", found: "colours change after 5 rows" },
    ]);
  });

  test("counts no cord of a band or a cable", () => {
    const crossings = { start: [0, 0], repeat: [[0, 6]] };
    const [rope] = written({ rope: { kind: "cable", lead: 0, repeat: 6, cross: [2, 2], crossings } }).motifs;
    expect(checkLook(garment, lookWith(rope!, {}))).toEqual([]);
  });

  test("holds no cord to a card", () => {
    const found = checkValues(
      lookWith({ ...motif, card: 24, colours: 2 } as CordMotif, { interval: 3, spread: 3 }),
    );
    expect(found).toEqual([]);
  });
});

describe("the independent check of a cord's counts", () => {
  test("finds nothing where every stretch is counted", () => {
    expect(checkLook(garment, look([stretch(3, 3, 3)]))).toEqual([]);
    // 3 cord stitches of 5 mm over 15 mm.
    expect(stretch(3, 3, 3).ease).toBe(0);
  });

  test("walks two repeats", () => {
    const rows = checkLook(garment, look([])).map(({ rule }) => rule);
    expect(rows).toEqual([3, 6, 9, 12].map((row) => `swing, cord, row ${row}`));
  });

  test.each([
    ["other needles", stretch(4, 3, 3)],
    ["other rows", stretch(3, 4, 3)],
    ["a loop of the same size", stretch(3, 3, 3, { fixed: 3 })],
  ])("takes no count for %s", (_, segment) => {
    expect(firstFound(segment)).toEqual(["no count for 3 needles across and 3 rows up"]);
  });

  test("takes the count for its own stretch among others", () => {
    expect(firstFound(stretch(3, 3, 3))).toEqual([]);
    const others = [stretch(3, 4, 9), stretch(4, 3, 9), stretch(3, 3, 9, { fixed: 9 }), stretch(3, 3, 3)];
    expect(checkLook(garment, look(others))).toEqual([]);
  });

  test("finds a stretch that does not rise, although it is counted", () => {
    const flat = lookWith(motif, { interval: 0, spread: 2 }, [stretch(3, 0, 2)]);
    expect(checkStretches(garment, motif, [section(flat, 1)])).toEqual([
      { rule: "swing, cord, row 0", found: "no count for 3 needles across and 0 rows up" },
      { rule: "swing, cord, row 0", found: "no count for 3 needles across and 0 rows up" },
    ]);
    // 3 needles and 1 row are 12.37 mm: 2 cord stitches are a fifth too few, 3 a fifth too many.
    const steep = lookWith(motif, { interval: 1, spread: 2 }, [stretch(3, 1, 2)]);
    expect(checkStretches(garment, motif, [section(steep, 1)])).toEqual([]);
  });

  test("finds ease below its limit and above it", () => {
    expect(firstFound(stretch(3, 3, 2))).toEqual(["ease -33.33 % is outside its limits"]);
    expect(firstFound(stretch(3, 3, 4))).toEqual(["ease 33.33 % is outside its limits"]);
    expect(firstFound(stretch(3, 3, 2), { ease: { from: -0.34, to: 0 } })).toEqual([]);
    expect(firstFound(stretch(3, 3, 4), { ease: { from: 0, to: 0.34 } })).toEqual([]);
  });

  test("lets ease stand at its limit, and a billionth off it as sums may come out", () => {
    const hair = 1e-9;
    expect(firstFound(stretch(3, 3, 3), { ease: { from: 0, to: 0 } })).toEqual([]);
    expect(firstFound(stretch(3, 3, 3), { ease: { from: hair, to: 1 } })).toEqual([]);
    expect(firstFound(stretch(3, 3, 3), { ease: { from: -1, to: -hair } })).toEqual([]);
    const outside = ["ease 0.00 % is outside its limits"];
    expect(firstFound(stretch(3, 3, 3), { ease: { from: 2 * hair, to: 1 } })).toEqual(outside);
    expect(firstFound(stretch(3, 3, 3), { ease: { from: -1, to: -2 * hair } })).toEqual(outside);
  });

  test("finds ease that is told wrong", () => {
    expect(firstFound(stretch(3, 3, 3, { ease: 0.01 }))).toEqual(["ease 0.01 is told where 0 is true"]);
    expect(firstFound(stretch(3, 3, 3, { ease: -0.01 }))).toEqual(["ease -0.01 is told where 0 is true"]);
    expect(firstFound(stretch(3, 3, 3, { ease: 1e-9 }))).toEqual([]);
  });

  test("counts in whole cord stitches, one at least", () => {
    const loose = { ease: { from: -2, to: 2 } };
    expect(firstFound(stretch(3, 3, 1), loose)).toEqual([]);
    expect(firstFound(stretch(3, 3, 0), loose)).toEqual(["0 cord stitches cannot be counted"]);
    expect(firstFound(stretch(3, 3, 2.5), loose)).toEqual(["2.5 cord stitches cannot be counted"]);
  });

  test("adds the way over each strand that lies below", () => {
    // Over a cord of 4 mm each half of 15 mm becomes 8.5 mm, for 8 : 15 : 17; over two cords it is 19 mm in all.
    const over = (climbs: number, lengthMm: number) => stretch(3, 3, 4, { climbs, ease: 20 / lengthMm - 1 });
    expect(firstFound(over(1, 17), {}, { thicknessMm: 4 })).toEqual([]);
    expect(firstFound(over(2, 19), {}, { thicknessMm: 4 })).toEqual([]);
    // A cord that nothing is said of is taken to be flat.
    expect(firstFound(over(1, 15), { ease: { from: 0, to: 1 } })).toEqual([]);
  });

  test("measures with the gauge of the cord", () => {
    // 24 stitches in 24 cm are 10 mm each: 3 are 30 mm over 15.
    const slack = { ease: { from: 0, to: 1 } };
    expect(firstFound(stretch(3, 3, 3, { ease: 1 }), slack, { overMm: 240 })).toEqual([]);
  });

  test("finds a gauge without a cord", () => {
    const { cord: _, ...ground } = garment.gauge;
    expect(checkLook({ ...garment, gauge: ground }, look([stretch(3, 3, 3)]))).toEqual([
      { rule: "gauge.cord", found: "is missing" },
    ]);
  });
});

describe("the independent check of a standing loop", () => {
  let loops: Garment;

  beforeAll(() => {
    loops = written({
      loops: {
        kind: "cord",
        quantities: { loop: { unit: "stitches", allow: [4, 5] } },
        lead: 0,
        repeat: 9,
        strands: {
          cord: {
            start: [-2, 0],
            repeat: [
              [-2, 3, { count: "loop" }],
              [2, 6],
              [-2, 9],
            ],
          },
        },
      },
    });
  });

  const loopFound = (loop: number, segment: FittedSegment): readonly string[] =>
    checkLook(loops, lookWith(loops.motifs[0]!, { loop }, [segment, stretch(3, 3, 3)]))
      .filter(({ rule }) => rule === "loops, cord, row 3")
      .map((one) => one.found);

  test("lets it stand off as far as the file says", () => {
    // 4 cord stitches of 5 mm over 9 mm, more than twice as long: no limit of ease is meant for that.
    expect(loopFound(4, stretch(0, 3, 4, { fixed: 4 }))).toEqual([]);
  });

  test("finds another count than the file's", () => {
    expect(loopFound(4, stretch(0, 3, 5, { fixed: 4 }))).toEqual(["5 cord stitches in a loop of 4"]);
    expect(loopFound(5, stretch(0, 3, 4, { fixed: 4 }))).toEqual([
      "no count for 0 needles across and 3 rows up",
    ]);
  });
});

describe("the independent check of the stretches between two sections", () => {
  /** From 3 needles across to 5: the stretch between the two is 4 across. */
  const sections = (joins: readonly FittedSegment[], own = stretch(5, 4, 5)) => [
    section(lookWith(motif, { interval: 4, spread: 2 }, [stretch(3, 4, 3)]), 1),
    section(lookWith(motif, { interval: 4, spread: 3 }, [own]), 1, joins),
  ];

  test("finds one that is not counted", () => {
    expect(checkStretches(garment, motif, sections([stretch(4, 4, 4)]))).toEqual([]);
    expect(checkStretches(garment, motif, sections([]))).toEqual([
      { rule: "swing, cord, row 12", found: "no count for 4 needles across and 4 rows up" },
    ]);
  });

  test("counts it as its own, and those within a section as the look says", () => {
    const wrong = stretch(4, 4, 2, { ease: -0.5 });
    expect(checkStretches(garment, motif, sections([wrong]))).toEqual([
      { rule: "swing, cord, row 12", found: "ease -50.00 % is outside its limits" },
    ]);
    // What is counted for a stretch between sections says nothing of one within the second.
    const joins = [stretch(4, 4, 4), stretch(5, 4, 9)];
    expect(checkStretches(garment, motif, sections(joins))).toEqual([]);
  });

  test("takes the look's own count where the stretch is as one of its own", () => {
    const alike = [section(lookWith(motif, { interval: 3, spread: 2 }, [stretch(3, 3, 3)]), 1)];
    expect(checkStretches(garment, motif, [...alike, ...alike])).toEqual([]);
  });

  test("looks only at those that are asked for", () => {
    const asked: (readonly number[])[] = [];
    const found = checkStretches(garment, motif, sections([], stretch(9, 9, 9)), (to, from) => {
      asked.push([from.row, to.row]);
      return to.run !== from.run;
    });
    expect(found.map(({ rule }) => rule)).toEqual(["swing, cord, row 12"]);
    expect(asked).toEqual([
      [0, 4],
      [4, 8],
      [8, 12],
      [12, 16],
    ]);
  });
});
