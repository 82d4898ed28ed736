import { describe, expect, test } from "vitest";
import { fieldsOf } from "../../../../src/fit/field.ts";
import type { Footing } from "../../../../src/fit/footing.ts";
import { createSomeLook, type SomeLook } from "../../../../src/fit/refusal/possible-looks.ts";
import { createRoom, type Room } from "../../../../src/fit/refusal/room.ts";
import { fitsTied } from "../../../../src/fit/refusal/tied.ts";
import type { Garment } from "../../../../src/garment/garment.ts";
import type { MarginsEntry, PieceEntry } from "../../../support/garment-file.ts";
import { band, cable, laid, plait, smallGarment, strip } from "../../../support/small-garment.ts";

/** Whether all placements of a garment, which are tied to one another, can be laid. */
const fits = (
  garment: Garment,
  someLook: SomeLook = createSomeLook(),
  room: Room = createRoom(garment),
): boolean =>
  fitsTied(
    garment,
    garment.placements.map((_, index) => index),
    fieldsOf(garment),
    someLook,
    room,
  );

/** Anywhere across the piece. */
const anywhere = { left: "0..99", right: "0..99" };

/** Patterns of so many stitches by so many rows on one piece, each on the whole of it. */
const together = (
  piece: PieceEntry,
  patterns: readonly (readonly [stitches: number, rows: number])[],
  margins: MarginsEntry = anywhere,
): Garment =>
  smallGarment({
    pieces: { front: piece },
    motifs: Object.fromEntries(patterns.map(([stitches, rows], at) => [`p${at}`, band(stitches, rows)])),
    place: patterns.map((_, at) => laid(`p${at}`, "front", margins)),
  });

describe("motifs that want the same rows of a piece", () => {
  const wide = (needles: number, ...stitches: number[]): Garment =>
    together(
      strip(needles, 12),
      stitches.map((each) => [each, 12]),
    );

  test("stand side by side as far as the piece is wide enough for all", () => {
    expect([8, 10].map((needles) => fits(wide(needles, 4, 6)))).toEqual([false, true]);
    expect([10, 12].map((needles) => fits(wide(needles, 4, 4, 4)))).toEqual([false, true]);
    expect([12, 14].map((needles) => fits(wide(needles, 4, 6, 4)))).toEqual([false, true]);
  });

  test("stand where each one's margins let it", () => {
    const sides = (left: number, right: number): boolean =>
      fits(
        smallGarment({
          pieces: { front: strip(20, 12) },
          motifs: { small: band(4, 12), large: band(6, 6) },
          place: [
            laid("small", "front", { left, right: 16 - left }),
            laid("large", "front", { left: 14 - right, right }),
          ],
        }),
      );
    // On 20 needles the small one leaves 3 at its left and covers 4 to 7; the large one covers 6 needles.
    expect([sides(3, 7), sides(3, 8)]).toEqual([true, false]);
    expect([sides(13, 11), sides(13, 7), sides(13, 6)]).toEqual([true, true, false]);
  });

  test("stand elsewhere than was tried first where a third wants the spot", () => {
    // The third stands in the middle, so the first, which may too, stands at the right, and the second at the left.
    const margins = [
      { left: [4, 8], right: "0..99" },
      { left: [0, 8], right: "0..99" },
      { left: 4, right: 4 },
    ];
    const third = wide(12, 4, 4, 4);
    const placements = smallGarment({
      pieces: { front: strip(12, 12) },
      motifs: { p0: band(4, 12), p1: band(4, 12), p2: band(4, 12) },
      place: margins.map((each, at) => laid(`p${at}`, "front", each)),
    }).placements;
    expect(fits({ ...third, placements })).toBe(true);
  });

  test("ask for nothing on another piece", () => {
    // Both repeats fill 21 rows on the front; beside margins they fill the 20 of the back.
    const garment = smallGarment({
      pieces: { front: strip(8, 20, { grow: "4 mm" }), back: strip(8, 20) },
      motifs: { p0: band(4, 7), p1: band(4, 3) },
      place: [
        laid("p0", "front", anywhere),
        laid("p1", "front", anywhere),
        laid("p0", "back", { ...anywhere, top: 6 }),
        laid("p1", "back", { ...anywhere, top: 2 }),
      ],
    });
    expect(fits(garment)).toBe(true);
  });

  test("ask the piece for one and the same length", () => {
    const grown = (...rows: number[]): boolean =>
      fits(
        together(
          strip(20, 20, { grow: "8 mm" }),
          rows.map((each) => [4, each]),
        ),
      );
    // Repeats of 7 or 3 rows fill 21, repeats of 11 fill 22.
    expect([grown(7, 3), grown(11, 22), grown(7, 11), grown(3, 11)]).toEqual([true, true, false, false]);
  });
});

describe("motifs one above the other on a piece", () => {
  /** Each between two marks 10 rows apart, leaving a row to the mark between them, of so many rows. */
  const stacked = (lower: number, upper: number, change: Partial<PieceEntry>): boolean =>
    fits(
      smallGarment({
        pieces: { front: strip(20, 20, { marks: { middle: "40 mm" }, ...change }) },
        motifs: { lower: band(4, lower), upper: band(4, upper) },
        place: [
          laid("lower", "front", { top: 1 }, { to: "middle" }),
          laid("upper", "front", { bottom: 1 }, { from: "middle" }),
        ],
      }),
    );

  test("may each have its own length, as long as the piece keeps its limits", () => {
    // 10 rows and 1 to the middle are 1 more than there are, 11 and 1 are 2 more, 7 and 1 are 2 fewer, 6 and 1 are 3 fewer.
    expect(["8 mm", "12 mm"].map((grow) => stacked(10, 11, { grow }))).toEqual([false, true]);
    expect(["16 mm", "20 mm"].map((shrink) => stacked(7, 6, { shrink }))).toEqual([false, true]);
    expect(["0 mm", "4 mm"].map((grow) => stacked(10, 9, { grow }))).toEqual([false, true]);
    expect(["0 mm", "4 mm"].map((shrink) => stacked(8, 9, { shrink }))).toEqual([false, true]);
  });

  test("make up for each other", () => {
    // 2 rows more below and 3 fewer above are one fewer.
    expect(stacked(11, 6, { grow: "8 mm", shrink: "12 mm" })).toBe(true);
    expect(stacked(11, 6, { grow: "4 mm", shrink: "12 mm" })).toBe(false);
  });

  test("count one length for two that stand side by side, where there are needles for both", () => {
    const beside = (grow: string, needles: number): boolean =>
      fits(
        smallGarment({
          pieces: { front: strip(needles, 20, { marks: { middle: "40 mm" }, grow }) },
          motifs: { lower: band(4, 11), other: band(4, 11), upper: band(4, 10) },
          place: [
            laid("lower", "front", { top: 1, ...anywhere }, { to: "middle" }),
            laid("other", "front", { top: 1, ...anywhere }, { to: "middle" }),
            laid("upper", "front", { bottom: 1 }, { from: "middle" }),
          ],
        }),
      );
    // 2 rows more below, once, and 1 above.
    expect([beside("8 mm", 8), beside("12 mm", 8), beside("12 mm", 6)]).toEqual([false, true, false]);
  });

  test("count the length of each piece by itself", () => {
    const stack = (on: string, margin: number) => [
      laid("lower", on, { top: margin }, { to: "middle" }),
      laid("upper", on, { bottom: margin }, { from: "middle" }),
    ];
    // A row more below and one above on either.
    const both = (grow: string): boolean =>
      fits(
        smallGarment({
          pieces: {
            front: strip(20, 20, { marks: { middle: "40 mm" }, grow: "8 mm" }),
            back: strip(20, 24, { marks: { middle: "48 mm" }, grow }),
          },
          motifs: { lower: band(4, 10), upper: band(4, 10) },
          place: [...stack("front", 1), ...stack("back", 3)],
        }),
      );
    expect([both("4 mm"), both("8 mm")]).toEqual([false, true]);
  });
});

describe("the row between two motifs one above the other", () => {
  const side = (left: number): MarginsEntry => ({ left, right: 16 - left });

  /** Patterns of so many rows below and above row 10 of 20, whichever of the two is asked first. */
  function touching(lower: number, upper: number, left: number[] = [8, 8]): boolean {
    const garment = smallGarment({
      pieces: { front: strip(20, 20, { marks: { middle: "40 mm" } }) },
      motifs: { lower: band(4, lower), upper: band(4, upper) },
      place: [
        laid("lower", "front", { top: [0, 2], ...side(left[0]!) }, { to: "middle" }),
        laid("upper", "front", { bottom: [0, 3], ...side(left[1]!) }, { from: "middle" }),
      ],
    });
    const answers = [garment, { ...garment, placements: [...garment.placements].reverse() }].map((one) =>
      fits(one),
    );
    expect(answers[1]).toBe(answers[0]);
    return answers[0]!;
  }

  test("is for one of them where they stand on the same needles", () => {
    // 5 rows fill all 10; 4 leave 2 below the mark, and 7 leave 3 above it.
    expect([touching(5, 5), touching(4, 5), touching(5, 7), touching(4, 7)]).toEqual([
      false,
      true,
      true,
      true,
    ]);
  });

  test("is for both where they stand beside each other", () => {
    expect([touching(5, 5, [0, 3]), touching(5, 5, [0, 4])]).toEqual([false, true]);
    expect([touching(5, 5, [7, 4]), touching(5, 5, [8, 4])]).toEqual([false, true]);
  });

  test("is none where another field lies between the two", () => {
    const between = (rows: number): boolean =>
      fits(
        smallGarment({
          pieces: { front: strip(20, 25, { marks: { low: "40 mm", high: "60 mm" } }) },
          motifs: { lower: band(4, 5), middle: band(4, rows), upper: band(4, 5) },
          place: [
            laid("lower", "front", {}, { to: "low" }),
            laid("middle", "front", { bottom: [0, 1], top: [0, 1] }, { from: "low", to: "high" }),
            laid("upper", "front", {}, { from: "high" }),
          ],
        }),
      );
    // 3 rows leave one at each end of 5, 4 leave one at the one or the other, and touch the motif there.
    expect([between(3), between(4), between(5)]).toEqual([true, false, false]);
  });
});

describe("motifs whose fields overlap", () => {
  /** A lower motif in the 12 rows from the cast-on, an upper one in the 12 to the bind-off; the 8 below and above are theirs. */
  const laidOver = (
    lower: number,
    upper: number,
    more: Partial<PieceEntry> = {},
    sides: MarginsEntry = {},
  ): Garment =>
    smallGarment({
      pieces: { front: strip(20, 20, { marks: { low: "32 mm", high: "48 mm" }, ...more }) },
      motifs: { lower: band(4, lower), upper: band(6, upper) },
      place: [
        laid("lower", "front", { top: "0..12", ...sides }, { to: "high", repeats: 1 }),
        laid("upper", "front", { bottom: "0..12", ...sides }, { from: "low", repeats: 1 }),
      ],
    });

  /** The same, whichever of the two is asked first. */
  function overlapping(...of: Parameters<typeof laidOver>): boolean {
    const garment = laidOver(...of);
    const answers = [garment, { ...garment, placements: [...garment.placements].reverse() }].map((one) =>
      fits(one),
    );
    expect(answers[1]).toBe(answers[0]);
    return answers[0]!;
  }

  test("keep to different rows, of which the last hanging's is one, or to different needles", () => {
    expect([overlapping(9, 10), overlapping(10, 9), overlapping(10, 10), overlapping(9, 11)]).toEqual([
      true,
      true,
      false,
      false,
    ]);
    expect(overlapping(12, 12, {}, anywhere)).toBe(true);
    expect(overlapping(12, 12, {}, {})).toBe(false);
  });

  test("do not change the length of what they share, and leave another motif above to change its own", () => {
    expect(overlapping(11, 9, { grow: "40 mm", shrink: "4 mm" })).toBe(false);
    const garment = (rows: number, change: Partial<PieceEntry>): boolean =>
      fits(
        smallGarment({
          pieces: {
            front: strip(20, 30, { marks: { low: "32 mm", high: "48 mm", middle: "80 mm" }, ...change }),
          },
          motifs: { lower: band(4, 7), upper: band(4, 7), top: band(4, rows) },
          place: [
            laid("lower", "front", { top: 5 }, { to: "high" }),
            laid("upper", "front", { bottom: 4, top: 1 }, { from: "low", to: "middle" }),
            laid("top", "front", { bottom: 1 }, { from: "middle" }),
          ],
        }),
      );
    expect([garment(10, {}), garment(10, { grow: "4 mm" }), garment(9, {})]).toEqual([false, true, true]);
    expect([garment(8, {}), garment(8, { shrink: "4 mm" })]).toEqual([false, true]);
  });
});

describe("placements that stand alike at a mark", () => {
  const repeat = 6;
  /** A pattern of 6 rows on pieces of so many rows, from so far above the cast-on; alike at the bind-off of both. */
  const matched = (first: [rows: number, bottom: string], second: [rows: number, bottom: string]): boolean =>
    fits(
      smallGarment({
        pieces: { front: strip(20, first[0]), back: strip(20, second[0]) },
        motifs: { waves: band(4, repeat) },
        place: [
          laid("waves", "front", { bottom: first[1], top: "0..5" }),
          laid("waves", "back", { bottom: second[1], top: "0..5" }),
        ],
        match: [{ motif: "waves", on: ["front", "back"], mark: "bind-off" }],
      }),
    );

  test("are equally far in their repeat there", () => {
    // 20 rows are 3 repeats and 2 rows; 23 are as much from 3 rows on.
    expect([matched([20, "0..0"], [23, "0..2"]), matched([20, "0..0"], [23, "0..3"])]).toEqual([false, true]);
    expect([matched([23, "0..2"], [20, "0..0"]), matched([23, "0..3"], [20, "0..0"])]).toEqual([false, true]);
  });

  test("are so at each mark they are matched at", () => {
    /** Three pieces in a ring: front and back at the top, back and sleeve at the middle. */
    const ring = (back: string, sleeve: string, middle = 14): boolean =>
      fits(
        smallGarment({
          pieces: {
            front: strip(20, 20),
            back: strip(20, 23, { marks: { middle: `${4 * middle} mm` } }),
            sleeve: strip(20, 23, { marks: { middle: "48 mm" } }),
          },
          motifs: { waves: band(4, repeat) },
          place: [
            laid("waves", "front", { bottom: "0..0", top: "0..5" }),
            laid("waves", "back", { bottom: back, top: "0..5" }),
            laid("waves", "sleeve", { bottom: sleeve, top: "0..5" }),
          ],
          match: [
            { motif: "waves", on: ["front", "back"], mark: "bind-off" },
            { motif: "waves", on: ["back", "sleeve"], mark: "middle" },
          ],
        }),
      );
    // At the top the back stands as the front does, 2 rows into a repeat, from 3 rows on. At row 14 it is 11 rows on then,
    // 5 into its repeat; the sleeve is so at row 12 from 1 row on.
    expect([ring("0..3", "0..0"), ring("0..3", "0..1"), ring("0..2", "0..1")]).toEqual([false, true, false]);
    // A row further up the back is whole at its middle.
    expect([ring("0..3", "1..5", 15), ring("0..3", "0..0", 15)]).toEqual([false, true]);
  });
});

describe("looks of several motifs", () => {
  /** Cables of which the one may cross every so many rows and the other every so many, side by side. */
  const beside = (one: number[], other: number[]): Garment =>
    smallGarment({
      pieces: { front: strip(20, 20, { grow: "12 mm" }) },
      motifs: { one: cable({ allow: one }), other: cable({ allow: other }) },
      place: [laid("one", "front", anywhere), laid("other", "front", anywhere)],
    });

  test("are chosen so that they go together", () => {
    // 7 rows fill 21, 11 fill 22.
    expect([fits(beside([7, 11], [11])), fits(beside([7], [11]))]).toEqual([true, false]);
    expect([fits(beside([7, 11], [7, 22])), fits(beside([11], [7, 22]))]).toEqual([true, true]);
  });

  test("are tried anew with each look of the first", () => {
    // 23 rows go with none of the other's; 22 with its first, whatever was tried of it before.
    expect(fits(beside([11, 23].reverse(), [11, 21]))).toBe(true);
    expect(fits(beside([10, 11], [11, 21]))).toBe(true);
  });

  test("stand on one look wherever a motif is laid", () => {
    const both = (rows: number): boolean =>
      fits(
        smallGarment({
          pieces: { front: strip(20, 21), back: strip(20, rows) },
          motifs: { ropes: cable({ allow: [7, 11] }) },
          place: [laid("ropes", "front"), laid("ropes", "back")],
        }),
      );
    expect([both(22), both(28)]).toEqual([false, true]);
  });
});

describe("cables that draw in", () => {
  test("ask for needles for each other's columns, too", () => {
    const onBed = (needles: number, drawIns: string[], columns: number[] = [1, 1]): boolean =>
      fits(
        smallGarment({
          bed: { needles },
          pieces: { front: strip(20, 12) },
          motifs: {
            one: cable(6, { "draw-in": drawIns[0]! }),
            other: cable(6, { "draw-in": drawIns[1]! }),
          },
          place: [
            laid("one", "front", anywhere, { columns: columns[0]! }),
            laid("other", "front", anywhere, { columns: columns[1]! }),
          ],
        }),
      );
    // 4 crossed stitches lose half of them, 2: a needle more at each side. Both lose 4: two more.
    expect([22, 24].map((needles) => onBed(needles, ["50 %", "50 %"]))).toEqual([false, true]);
    expect([20, 22].map((needles) => onBed(needles, ["50 %", "0 %"]))).toEqual([false, true]);
    expect([20, 22].map((needles) => onBed(needles, ["0 %", "50 %"]))).toEqual([false, true]);
    expect([24, 26].map((needles) => onBed(needles, ["50 %", "50 %"], [2, 1]))).toEqual([false, true]);
  });
});

describe("what is asked", () => {
  const footing = (repeatRows: number, more: Partial<Footing> = {}): Footing => ({
    leadRows: 0,
    repeatRows,
    reach: { left: 2, right: 2 },
    crossedStitches: 0,
    ...more,
  });

  /** Footings of motifs by name, and how often each motif is asked for. */
  function looks(of: Record<string, readonly Footing[]>): { someLook: SomeLook; asked: () => string[] } {
    const asked: string[] = [];
    return {
      someLook: (_, motif, couldDo, willDo = () => true) => {
        asked.push(motif.name);
        return of[motif.name]!.some((one) => couldDo(one) && willDo(one));
      },
      asked: () => asked,
    };
  }

  const garment = (): Garment =>
    together(strip(20, 12), [
      [4, 6],
      [4, 6],
    ]);

  test("is the second motif once for footings of the first that offer the same", () => {
    // 6 rows and 4 rows fill 12 rows alike, 5 rows do not.
    const { someLook, asked } = looks({ p0: [footing(6), footing(4), footing(5)], p1: [footing(5)] });
    expect(fits(garment(), someLook)).toBe(false);
    expect(asked()).toEqual(["p0", "p1"]);
    const wider = looks({ p0: [footing(6), footing(6, { reach: { left: 3, right: 3 } })], p1: [footing(5)] });
    expect(fits(garment(), wider.someLook)).toBe(false);
    expect(wider.asked()).toEqual(["p0", "p1", "p1"]);
  });

  test("is not the length of a piece that carries nothing else", () => {
    // On the back 6 rows fill 18 and 4 rows fill 20, which is nothing to the motif beside them on the front.
    const garment = smallGarment({
      pieces: { front: strip(20, 12), back: strip(20, 17, { grow: "12 mm" }) },
      motifs: { p0: band(4, 6), p1: band(4, 6) },
      place: [laid("p0", "front", anywhere), laid("p1", "front", anywhere), laid("p0", "back")],
    });
    const { someLook, asked } = looks({ p0: [footing(6), footing(4)], p1: [footing(5)] });
    expect(fits(garment, someLook)).toBe(false);
    expect(asked()).toEqual(["p0", "p1"]);
  });

  test("is nothing of motifs that are laid elsewhere or nowhere", () => {
    const elsewhere = smallGarment({
      pieces: { front: strip(20, 12), sleeve: strip(20, 12) },
      motifs: {
        p0: band(4, 6),
        spare: plait(3, 3, { rules: ["spread < interval"] }),
        p1: band(4, 6),
        far: band(4, 11),
      },
      place: [laid("p0", "front", anywhere), laid("far", "sleeve"), laid("p1", "front", anywhere)],
    });
    const inGroup = (group: number[]): boolean =>
      fitsTied(elsewhere, group, fieldsOf(elsewhere), createSomeLook(), createRoom(elsewhere));
    expect([inGroup([0, 2]), inGroup([0, 1, 2])]).toEqual([true, false]);
  });

  test("is nothing where it is seen at a glance that there is no room", () => {
    const { someLook } = looks({ p0: [footing(6)], p1: [footing(4)] });
    expect(fits(garment(), someLook)).toBe(true);
    const { room, ...one } = { ...garment(), room: createRoom(garment()) };
    expect(fits(one, someLook, { ...room, mayBe: () => false })).toBe(false);
    const notTheSecond: Room = { ...room, mayBe: ({ index }) => index === 0 };
    expect(fits(one, someLook, notTheSecond)).toBe(false);
    const alike = { ...one, placements: one.placements.map((each) => ({ ...each, motif: "p0" })) };
    expect([fits(alike, someLook), fits(alike, someLook, notTheSecond)]).toEqual([true, false]);
  });
});
