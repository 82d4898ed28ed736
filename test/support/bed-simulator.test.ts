import { describe, expect, test } from "vitest";
import {
  edgesFrom,
  type KnitOptions,
  knit,
  type SheetAct,
  type SheetPiece,
  type SheetRow,
} from "./bed-simulator.ts";

const castOn: SheetAct = { act: "cast-on", from: -4, to: 4 };

function piece(rows: readonly SheetRow[]): SheetPiece {
  return { piece: "strip", needles_at_start: [-4, 4], rows };
}

/** A strip on L4 to R4, cast on with the carriage at the right: even rows end at the right, odd ones at the left. */
const strip = (...rows: SheetRow[]): SheetPiece =>
  piece([{ row: 0, carriage: "right", needles: [-4, 4], do: [castOn] }, ...rows]);

const at = (
  row: number,
  needles: NonNullable<SheetRow["needles"]>,
  ...acts: readonly SheetAct[]
): SheetRow => ({ row, carriage: row % 2 === 0 ? "right" : "left", needles, do: acts });

const hang = (strand: string, needle: number, count: number, motif = "plait"): SheetAct => ({
  act: "hang",
  strand,
  needle,
  count,
  motif,
  column: 1,
});

const finish = (strand: string, needle: number, loops = 3): SheetAct => ({
  act: "finish",
  strand,
  needle,
  loops,
  motif: "plait",
  column: 1,
});

const rulesOf = (sheet: SheetPiece, options?: KnitOptions): string[] =>
  knit(sheet, options).violations.map(({ row, rule }) => `${row}: ${rule}`);

/** Interval 4, spread 3, one repeat: lead-in 3 stitches, crossings 5. */
const plaited = strip(
  at(2, [-4, 4], hang("left", -1, 0), hang("right", 1, 0)),
  at(6, [-4, 4], hang("left", -3, 3), hang("right", 3, 3)),
  at(10, [-4, 4], hang("left", 3, 5), hang("right", -3, 5)),
  at(14, [-4, 4], hang("left", -3, 5), hang("right", 3, 5), finish("left", -3), finish("right", 3)),
  at(16, [], { act: "bind-off", from: -4, to: 4 }),
);

const counts = [
  { needles: 2, rows: 4, pickup: 3 },
  { needles: 5, rows: 4, pickup: 5 },
];

describe("a strip with a crossed cord", () => {
  test("is knitted to its end", () => {
    const report = knit(plaited, {
      carriage: "right",
      bedNeedles: 8,
      orders: { plait: ["left", "right"] },
      pickups: { plait: counts },
      cordNeedles: 3,
    });
    expect(report.violations).toEqual([]);
    expect(report).toMatchObject({ rows: 16, passes: 16, needlesAtEnd: [], carriageAtEnd: "right" });
    // 3 + 5 + 5 on each of two strands, and the stitch that each hangs by at the start.
    expect(report.cordStitches).toBe(28);
    expect(report.cordStitchesOf).toEqual({ plait: 28 });
    expect(report.hangings[2]).toEqual({
      row: 6,
      motif: "plait",
      column: 1,
      strand: "left",
      needle: -3,
      count: 3,
      loop: false,
    });
    expect(report.hangings).toHaveLength(8);
  });

  test("has its needles at every row, the last one as it was before binding off", () => {
    const report = knit(plaited);
    expect(report.spans.map(({ row }) => row)).toEqual([...Array(17).keys()]);
    expect(edgesFrom(report)("left", 16)).toBe(4);
    expect(() => edgesFrom(report)("left", 17)).toThrow("row 17");
  });

  test("keeps the order it began with, and the order that is asked for", () => {
    const turned = strip(
      at(2, [-4, 4], hang("left", -1, 0), hang("right", 1, 0)),
      at(6, [-4, 4], hang("right", 3, 3), hang("left", -3, 3), finish("left", -3), finish("right", 3)),
    );
    expect(rulesOf(turned)).toEqual(["6: strand order"]);
    expect(rulesOf(turned, { orders: { plait: ["right", "left"] } })).toEqual(["2: strand order"]);
    expect(rulesOf(turned, { orders: { plait: ["left"] } })).toEqual(["2: strand order", "6: strand order"]);
  });

  test("hangs a strand once in a row", () => {
    const twice = strip(
      at(2, [-4, 4], hang("left", -1, 0)),
      at(6, [-4, 4], hang("left", -3, 3), hang("left", -3, 3), finish("left", -3)),
    );
    expect(rulesOf(twice)).toContain("6: strand order");
    expect(rulesOf(twice)).toContain("6: count");
  });

  test("has no strand out of order across columns", () => {
    const second = (act: SheetAct): SheetAct => ({ ...act, column: 2 }) as SheetAct;
    const columns = strip(
      at(
        2,
        [-4, 4],
        ...[hang("left", -3, 0), hang("right", -2, 0), finish("left", -3), finish("right", -2)],
        ...[hang("left", 2, 0), hang("right", 3, 0), finish("left", 2), finish("right", 3)].map(second),
      ),
    );
    expect(rulesOf(columns)).toEqual([]);
    expect(knit(columns).cordStitches).toBe(4);
  });
});

describe("counts", () => {
  const two = (first: number, second: number, third = second): SheetPiece =>
    strip(
      at(2, [-4, 4], hang("left", -1, first)),
      at(6, [-4, 4], hang("left", -3, second)),
      at(10, [-4, 4], hang("left", -1, third), finish("left", -1)),
    );

  test("begin at 0", () => {
    expect(rulesOf(two(0, 3))).toEqual([]);
    expect(rulesOf(two(1, 3))).toEqual(["2: count"]);
  });

  test("go on from the last hanging, in whole stitches", () => {
    expect(rulesOf(two(0, 0))).toEqual(["6: count", "10: count"]);
    expect(rulesOf(two(0, 2.5))).toEqual(["6: count", "10: count"]);
  });

  test("are the same for the same segment", () => {
    expect(rulesOf(two(0, 3, 4))).toEqual(["10: count"]);
  });

  test("are those of the fit", () => {
    expect(rulesOf(two(0, 3), { pickups: { plait: counts } })).toEqual([]);
    expect(rulesOf(two(0, 4), { pickups: { plait: counts } })).toEqual(["6: count", "10: count"]);
    expect(rulesOf(two(0, 3), { pickups: { plait: counts.slice(1) } })).toEqual(["6: count", "10: count"]);
  });

  test("begin anew with a new length of cord", () => {
    const again = strip(
      at(2, [-4, 4], hang("left", -1, 0)),
      at(6, [-4, 4], hang("left", -3, 3), finish("left", -3)),
      at(8, [-4, 4], hang("left", -1, 0)),
      at(12, [-4, 4], hang("left", -3, 3), finish("left", -3)),
    );
    expect(rulesOf(again)).toEqual([]);
    expect(knit(again).cordStitches).toBe(8);
  });

  test("are kept apart for two placements of one motif", () => {
    const of = (placement: number, act: SheetAct): SheetAct => ({ ...act, placement }) as SheetAct;
    const beside = strip(
      at(2, [-4, 4], of(1, hang("left", -3, 0)), of(2, hang("left", 2, 0))),
      at(6, [-4, 4], of(1, finish("left", -3)), of(2, finish("left", 2))),
    );
    expect(rulesOf(beside)).toEqual([]);
    expect(knit(beside).cordStitches).toBe(2);
  });
});

describe("the ends of a cord", () => {
  const ended = (...acts: SheetAct[]): SheetPiece =>
    strip(at(2, [-4, 4], hang("left", -1, 0)), at(6, [-4, 4], hang("left", -3, 3), ...acts));

  test("are finished where the strand hangs last, with all its loops", () => {
    expect(rulesOf(ended(finish("left", -3)), { cordNeedles: 3 })).toEqual([]);
    expect(rulesOf(ended(finish("left", -2)))).toEqual(["6: finish"]);
    expect(rulesOf(ended(finish("left", -3)), { cordNeedles: 4 })).toEqual(["6: finish"]);
  });

  test("are finished once, and all of them", () => {
    expect(rulesOf(ended())).toEqual(["6: finish"]);
    expect(rulesOf(ended(finish("left", -3), finish("left", -3)))).toEqual(["6: finish"]);
    expect(rulesOf(ended(finish("left", -3), finish("right", 3)))).toEqual(["6: finish"]);
  });
});

describe("rows and carriage", () => {
  test("rows go up one after the other", () => {
    expect(rulesOf(strip(at(4, [-4, 4]), at(4, [-4, 4])))).toEqual(["4: row order"]);
    expect(rulesOf(strip(at(4, [-4, 4]), at(2, [-4, 4])))).toEqual(["4: row order"]);
    expect(rulesOf(piece([at(2, [-4, 4], castOn)]))).toEqual(["2: row order"]);
  });

  test("the carriage changes sides with every row", () => {
    expect(rulesOf(strip({ ...at(3, [-4, 4]), carriage: "right" }))).toEqual(["3: carriage"]);
    expect(rulesOf(strip(at(3, [-4, 4])), { carriage: "left" })).toEqual(["0: carriage", "3: carriage"]);
  });

  test("a row needs something to knit", () => {
    const off: SheetAct = { act: "bind-off", from: -4, to: 4 };
    expect(rulesOf(strip(at(2, [], off), at(3, [])))).toEqual(["2: nothing to knit"]);
  });

  test("an act that is not known is not passed over", () => {
    const odd = { act: "brush" } as unknown as SheetAct;
    expect(rulesOf(strip(at(2, [-4, 4], odd)))).toEqual(["2: act"]);
  });
});

describe("needles", () => {
  test("those at the start are cast on at row 0", () => {
    expect(rulesOf(piece([at(0, [-3, 3], { act: "cast-on", from: -3, to: 3 })]))).toEqual(["0: needles"]);
    expect(rulesOf(piece([at(0, [])]))).toEqual(["0: needles"]);
  });

  test("those after a row are those stated", () => {
    expect(rulesOf(strip(at(2, [-5, 4])))).toEqual(["2: needles"]);
    expect(rulesOf(strip(at(2, [])))).toEqual(["2: needles"]);
  });

  test("one is increased or decreased on either side, wherever the carriage is", () => {
    const shaped = strip(
      at(2, [-5, 4], { act: "increase", side: "left", needles: 1 }),
      at(4, [-5, 5], { act: "increase", side: "right", needles: 1 }),
      at(6, [-4, 5], { act: "decrease", side: "left", needles: 1 }),
      at(8, [-4, 4], { act: "decrease", side: "right", needles: 1 }),
    );
    expect(rulesOf(shaped)).toEqual([]);
    const edge = edgesFrom(knit(shaped));
    expect([1, 2, 5, 6].map((row) => edge("left", row))).toEqual([4, 5, 5, 4]);
    expect([3, 4, 7, 8].map((row) => edge("right", row))).toEqual([4, 5, 5, 4]);
  });

  test("several are worked only where the carriage rests", () => {
    const several = (row: number, act: "cast-on" | "bind-off"): string[] =>
      rulesOf(
        act === "cast-on"
          ? strip(at(row, [-6, 4], { act, side: "left", needles: 2 }))
          : strip(at(row, [-2, 4], { act, side: "left", needles: 2 })),
      );
    expect(several(3, "cast-on")).toEqual([]);
    expect(several(3, "bind-off")).toEqual([]);
    expect(several(2, "cast-on")).toEqual(["2: away from the carriage"]);
    expect(several(2, "bind-off")).toEqual(["2: away from the carriage"]);
    const one: SheetAct = { act: "decrease", side: "left", needles: 1 };
    expect(rulesOf(strip(at(2, [-2, 4], one, one)))).toEqual(["2: away from the carriage"]);
  });

  test("there is none between L1 and R1", () => {
    const narrow: SheetPiece = {
      piece: "strip",
      needles_at_start: [-4, -1],
      rows: [
        at(0, [-4, -1], { act: "cast-on", from: -4, to: -1 }),
        at(1, [-4, 1], { act: "increase", side: "right", needles: 1 }),
      ],
    };
    expect(rulesOf(narrow)).toEqual([]);
  });

  test("the bed ends somewhere", () => {
    const wide = strip(at(2, [-5, 4], { act: "increase", side: "left", needles: 1 }));
    expect(rulesOf(wide, { bedNeedles: 10 })).toEqual([]);
    expect(rulesOf(wide, { bedNeedles: 8 })).toEqual(["2: off the bed"]);
  });

  test("nothing hangs, crosses or comes off where nothing is in work", () => {
    const bare = strip(at(2, [-4, 4], hang("left", 5, 0), finish("left", 5)));
    expect(rulesOf(bare)).toEqual(["2: not in work", "2: not in work"]);
    const off: SheetAct = { act: "bind-off", side: "right", needles: 9 };
    expect(rulesOf(strip(at(2, [], off)))).toEqual(["2: not in work"]);
    const grown: SheetAct = { act: "increase", side: "right", needles: 1 };
    expect(rulesOf(strip(at(2, [], { act: "bind-off", from: -4, to: 4 }, grown)))).toEqual([
      "2: not in work",
    ]);
    expect(rulesOf(strip(at(2, [-4, 4], { act: "cast-on", from: 4, to: 4 })))).toEqual([
      "2: already in work",
    ]);
  });

  test("all that is in work is bound off at the end", () => {
    expect(rulesOf(strip(at(2, [], { act: "bind-off", from: -4, to: 3 })))).toEqual(["2: bind-off"]);
  });
});

describe("cables", () => {
  const cross = (changes: Partial<Extract<SheetAct, { act: "cross" }>>): string[] =>
    rulesOf(
      strip(
        at(2, [-4, 4], {
          act: "cross",
          from: -2,
          to: 2,
          left: 2,
          right: 2,
          over: "left",
          motif: "rope",
          ...changes,
        }),
      ),
    );

  test("change places on needles in work, none of them 0", () => {
    expect(cross({})).toEqual([]);
    expect(cross({ from: -2, to: 3, right: 3 })).toEqual([]);
    expect(cross({ from: 2, to: 5 })).toEqual(["2: not in work"]);
  });

  test("are as many needles as are said", () => {
    expect(cross({ left: 3 })).toEqual(["2: cross"]);
    expect(cross({ left: 4, right: 0 })).toEqual(["2: cross"]);
    expect(cross({ over: "both" as "left" })).toEqual(["2: cross"]);
  });

  test("are reported", () => {
    const report = knit(
      strip(at(2, [-4, 4], { act: "cross", from: -2, to: 2, left: 2, right: 2, over: "right" })),
    );
    expect(report.crossings).toEqual([
      { row: 2, motif: "", column: 1, from: -2, to: 2, left: 2, right: 2, over: "right" },
    ]);
  });
});

describe("a neck in two halves", () => {
  const open: readonly SheetAct[] = [
    { act: "bind-off", from: -1, to: 1, yarn: "separate" },
    { act: "hold", from: -4, to: -2 },
  ];
  const right: readonly SheetRow[] = [
    at(4, [2, 4], ...open),
    at(5, [3, 4], { act: "decrease", side: "left", needles: 1 }),
    at(8, [], { act: "bind-off", from: 3, to: 4 }),
  ];
  const left: readonly SheetRow[] = [
    at(4, [-4, -2], { act: "work", from: -4, to: -2 }),
    at(6, [-4, -3], { act: "decrease", side: "right", needles: 1 }),
    at(8, [], { act: "bind-off", from: -4, to: -3 }),
  ];

  test("is worked at the carriage's side first, then from the same row again", () => {
    const report = knit(strip(...right, ...left));
    expect(report.violations).toEqual([]);
    expect(report).toMatchObject({ rows: 8, passes: 12, needlesAtEnd: [] });
    const edge = edgesFrom(report);
    expect([0, 4, 5, 8].map((row) => [edge("left", row), edge("right", row)])).toEqual([
      [4, 4],
      [4, 4],
      [4, 4],
      [4, 4],
    ]);
  });

  test("is no half on the other side", () => {
    const wrong = strip(
      at(4, [-4, -2], open[0]!, { act: "hold", from: 2, to: 4 }),
      at(8, [], { act: "bind-off", from: -4, to: -2 }),
      at(4, [2, 4], { act: "work", from: 2, to: 4 }),
      at(8, [], { act: "bind-off", from: 2, to: 4 }),
    );
    expect(rulesOf(wrong)).toEqual(["4: hold"]);
  });

  test("leaves no gap for the carriage to pass over", () => {
    const gap = strip(at(4, [-4, 4], open[0]!), at(5, [-4, 4]));
    expect(rulesOf(gap)).toEqual(["4: gap"]);
  });

  test("does not go on from another row, nor with the carriage on the other side", () => {
    const [first, ...rest] = left;
    expect(rulesOf(strip(...right, { ...first!, row: 6 }, ...rest))).toContain("6: row order");
    expect(rulesOf(strip(...right, { ...first!, carriage: "left" }, ...rest))).toEqual(["4: carriage"]);
  });

  test("takes up what was held, all of it, after the other half is off", () => {
    expect(rulesOf(strip(...right))).toEqual(["8: hold"]);
    expect(rulesOf(strip(...right.slice(0, 2), ...left))).toContain("4: hold");
    expect(rulesOf(strip(at(4, [-4, 4], { act: "work", from: -4, to: -4 })))).toContain("4: hold");
    const part = at(4, [-3, -2], { act: "work", from: -3, to: -2 });
    expect(rulesOf(strip(...right, part))).toContain("4: hold");
  });

  test("hangs nothing on needles in hold", () => {
    const held = at(5, [2, 4], hang("left", -3, 0), finish("left", -3));
    const sheet = strip(
      right[0]!,
      held,
      at(8, [], { act: "bind-off", from: 2, to: 4 }),
      left[0]!,
      left[1]!,
      left[2]!,
    );
    expect(rulesOf(sheet)).toEqual(["5: not in work", "5: not in work"]);
    expect(rulesOf(strip(at(4, [2, 4], open[0]!, { act: "hold", from: -4, to: -1 })))).toContain(
      "4: not in work",
    );
  });

  test("does not grow into needles in hold", () => {
    const grown = at(
      5,
      [-2, 4],
      ...[0, 1, 2].map((): SheetAct => ({ act: "increase", side: "left", needles: 1 })),
    );
    expect(rulesOf(strip(right[0]!, grown))).toContain("5: already in work");
  });
});

describe("ladders", () => {
  const out = (needle: number, onto: number): SheetAct => ({ act: "out", needle, onto });
  const back = (needle: number, from: number): SheetAct => ({ act: "in", needle, from });
  const end = at(8, [], { act: "bind-off", from: -4, to: 4 });
  const ladderBy = (opening: SheetAct, closing: SheetAct): SheetPiece =>
    strip(at(2, [-4, 4], opening), at(6, [-4, 4], closing), end);

  test("are floated past, and kept from row to row", () => {
    const report = knit(ladderBy(out(2, 3), back(2, 3)));
    expect(report.violations).toEqual([]);
    expect(report.ladders).toEqual([{ needle: 2, from: 2, to: 6 }]);
  });

  test("go to a neighbour, come back once, and have a stitch beyond them", () => {
    expect(rulesOf(ladderBy(out(2, 4), back(2, 3)))).toEqual(["2: ladder"]);
    expect(rulesOf(ladderBy(out(2, 3), back(1, 3)))).toContain("6: ladder");
    expect(
      rulesOf(strip(at(2, [-4, 4], out(2, 3)), at(8, [], { act: "bind-off", from: -4, to: 4 }))),
    ).toEqual(["8: bind-off", "8: ladder"]);
    expect(rulesOf(ladderBy(out(4, 3), back(4, 3)))).toContain("2: ladder");
  });

  test("take no hanging and no crossing", () => {
    const hung = strip(at(2, [-4, 4], out(2, 3), hang("left", 2, 0)), at(6, [-4, 4], back(2, 3)), end);
    expect(rulesOf(hung)).toContain("2: not in work");
  });
});

describe("patterns", () => {
  const pattern = (
    repeat: number,
    changes: Partial<Extract<SheetAct, { act: "pattern" }>> = {},
  ): SheetAct => ({
    act: "pattern",
    from: -4,
    to: 4,
    repeat,
    repeats: 2,
    rows: 4,
    stitches: 3,
    across: 2,
    edge: { left: 1, right: 1 },
    card: { row: 1, stitch: 10, stitches: 24 },
    motif: "leaves",
    placement: 1,
    ...changes,
  });
  const plain: SheetAct = { act: "plain", from: -4, to: 4, motif: "leaves", placement: 1 };
  const knitted = (first: SheetAct, second: SheetAct, endsAt = 10): string[] =>
    rulesOf(
      strip(
        at(2, [-4, 4], first),
        at(6, [-4, 4], second),
        at(endsAt, [-4, 4], plain),
        at(12, [], { act: "bind-off", from: -4, to: 4 }),
      ),
    );

  test("are whole across and upward", () => {
    expect(knitted(pattern(1), pattern(2))).toEqual([]);
    expect(knitted(pattern(1), pattern(2), 9)).toEqual(["9: pattern"]);
    expect(knitted(pattern(1), pattern(3))).toContain("6: pattern");
    expect(knitted(pattern(1, { across: 1 }), pattern(2))).toEqual(["2: pattern"]);
    expect(knitted(pattern(1, { repeats: 3 }), pattern(2, { repeats: 3 }))).toEqual(["10: pattern"]);
    expect(knitted(pattern(1, { from: -5, edge: { left: 2, right: 1 } }), pattern(2))).toContain(
      "2: not in work",
    );
  });

  test("begin where the card does", () => {
    expect(knitted(pattern(1, { card: { row: 1, stitch: 9, stitches: 24 } }), pattern(2))).toEqual([
      "2: pattern",
    ]);
    expect(knitted(pattern(1, { card: { row: 2, stitch: 10, stitches: 24 } }), pattern(2))).toEqual([
      "2: pattern",
    ]);
    expect(knitted(pattern(1, { card: { row: 1, stitch: 2, stitches: 8 } }), pattern(2))).toContain(
      "2: pattern",
    );
  });

  test("end", () => {
    const endless = strip(at(2, [-4, 4], pattern(1)), at(6, [], { act: "bind-off", from: -4, to: 4 }));
    expect(rulesOf(endless)).toContain("6: pattern");
    expect(rulesOf(strip(at(2, [-4, 4], plain), at(6, [], { act: "bind-off", from: -4, to: 4 })))).toEqual([
      "2: pattern",
    ]);
  });
});

describe("standing loops", () => {
  const loop = (needle: number, count: number): SheetAct =>
    ({ ...hang("cord", needle, count), loop: true }) as SheetAct;
  test("are counted apart from stretches of the same size", () => {
    const looped = (last: number): SheetPiece =>
      strip(
        at(2, [-4, 4], hang("cord", 1, 0)),
        at(4, [-4, 4], loop(1, 9)),
        at(6, [-4, 4], hang("cord", 1, 2)),
        at(8, [-4, 4], loop(1, last), finish("cord", 1)),
        at(10, [], { act: "bind-off", from: -4, to: 4 }),
      );
    expect(rulesOf(looped(9))).toEqual([]);
    expect(rulesOf(looped(8))).toEqual(["8: count"]);
  });
});
