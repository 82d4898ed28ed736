import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CountedPiece } from "../../../src/cloth/counted-piece.ts";
import {
  byCostThenPlainness,
  type Candidate,
  candidatesIn,
  heightOf,
  type Room,
  repeatsIn,
  standingsIn,
  termsOf,
} from "../../../src/fit/candidates.ts";
import { panelOf } from "../../../src/fit/panel.ts";
import { type Allowed, allows, anyFrom, only } from "../../../src/garment/allowed.ts";
import type { Margins, Placement } from "../../../src/garment/garment.ts";
import { counted, field, footing, placement } from "./support/plain-parts.ts";

/** A field of 40 rows on a straight piece of 20 needles to each side; a lead-in of 4 rows and repeats of 8. */
const room = (changes: Partial<Room> = {}, of: Partial<Placement> = {}): Room => ({
  field: field({ placement: placement(of) }),
  footing: footing(),
  change: 0,
  rows: 40,
  columns: 1,
  gap: 0,
  pieces: [{ piece: counted(), fromRow: 0 }],
  company: 0,
  weights: {},
  ...changes,
});

const margins = (changes: Partial<Margins>): Pick<Placement, "margins"> => ({
  margins: { ...placement().margins, ...changes },
});

const free = (left: Allowed, right: Allowed): Pick<Placement, "margins"> =>
  margins({ sides: { kind: "free", left, right } });

/** Repeats, bottom, top and place across, of each candidate. */
const shown = (candidates: readonly Candidate[]): readonly (readonly number[])[] =>
  candidates.map(({ repeats, bottom, top, shift }) => [repeats, bottom, top, shift]);

describe("the order of what costs alike", () => {
  const plain = { cost: 1, change: 0, repeats: 3, columns: 2, gap: 4 };

  test.each([
    ["the cheaper", { cost: 0.5, change: 9, repeats: 9, columns: 9, gap: 9 }],
    ["what changes the piece less", { change: 1, repeats: 1 }, { change: -2, repeats: 0 }],
    ["fewer repeats", { repeats: 2, columns: 9 }],
    ["fewer columns", { columns: 1, gap: 9 }],
    ["the narrower gap", { gap: 3 }],
    ["what becomes shorter", { change: -1 }, { change: 1 }],
  ] as const)("%s comes first", (_, first, second: object = {}) => {
    const [one, other] = [
      { ...plain, ...first },
      { ...plain, ...second },
    ];
    expect(byCostThenPlainness(one, other)).toBeLessThan(0);
    expect(byCostThenPlainness(other, one)).toBeGreaterThan(0);
  });

  test("is none between what is alike", () => expect(byCostThenPlainness(plain, { ...plain })).toBe(0));
});

describe("numbers of repeats", () => {
  test("leave no more rows spare than the margins may take, and no fewer than they must", () => {
    // 40 rows less 4 are 36: n repeats leave 36 - 8n spare, 28, 20, 12 and 4.
    expect(repeatsIn(room())).toEqual([1, 2, 3, 4]);
    const of = (bottom: Allowed, top: Allowed): readonly number[] =>
      repeatsIn(room({}, margins({ bottom, top })));
    expect(of(only(2, 3), only(2, 3))).toEqual([4]);
    // 12 at most below and 8 above take 20.
    expect(of(only(1, 12), only(0, 8))).toEqual([2, 3, 4]);
    // At least 2 and 3 are more than 4.
    expect(of(anyFrom(2), anyFrom(3))).toEqual([1, 2, 3]);
    expect(of(anyFrom(2), anyFrom(2))).toEqual([1, 2, 3, 4]);
    expect(of(only(0), only(0))).toEqual([]);
  });

  test("are among those allowed", () => {
    expect(repeatsIn(room({}, { repeats: { allowed: only(2, 4, 9) } }))).toEqual([2, 4]);
  });

  test("fill the rows of a field that has changed its length, and none that is too short", () => {
    expect(repeatsIn(room({ rows: 44 }))).toEqual([1, 2, 3, 4, 5]);
    expect(repeatsIn(room({ rows: 11 }))).toEqual([]);
    expect(repeatsIn(room({ rows: 12 }))).toEqual([1]);
  });

  test("take lead-in and so many repeats of rows", () => {
    expect(heightOf({ footing: footing(), repeats: 4 })).toBe(4 + 4 * 8);
    expect(heightOf({ footing: footing({ leadRows: 0, repeatRows: 5 }), repeats: 3 })).toBe(15);
  });
});

describe("ways to part the spare rows", () => {
  const ways = (rows: number, changes: Partial<Margins> = {}, more: Partial<Room> = {}) => {
    const one = room({ rows, ...more }, margins(changes));
    return [...standingsIn({ ...one, repeats: 1 })].map(({ bottom, top }) => [bottom, top]);
  };

  test("begin in the middle and go outward, below first", () => {
    // 12 rows are worked: 4 spare, and 5.
    expect(ways(16)).toEqual([
      [2, 2],
      [1, 3],
      [3, 1],
      [0, 4],
      [4, 0],
    ]);
    expect(ways(17)).toEqual([
      [2, 3],
      [3, 2],
      [1, 4],
      [4, 1],
      [0, 5],
      [5, 0],
    ]);
  });

  test("keep the margins below and above", () => {
    expect(ways(16, { bottom: anyFrom(2) })).toEqual([
      [2, 2],
      [3, 1],
      [4, 0],
    ]);
    expect(ways(16, { top: anyFrom(3) })).toEqual([
      [1, 3],
      [0, 4],
    ]);
    expect(ways(16, { bottom: only(0, 1) })).toEqual([
      [1, 3],
      [0, 4],
    ]);
    expect(ways(16, { top: only(0, 1) })).toEqual([
      [3, 1],
      [4, 0],
    ]);
    expect(ways(16, { bottom: only(0, 3), top: only(1, 4) })).toEqual([
      [3, 1],
      [0, 4],
    ]);
    expect(ways(16, { bottom: only(1), top: only(2) })).toEqual([]);
    expect(ways(16, { bottom: only(4), top: only(0) })).toEqual([[4, 0]]);
    expect(ways(12)).toEqual([[0, 0]]);
  });

  const listed = fc.uniqueArray(fc.integer({ min: 0, max: 14 }), { minLength: 1, maxLength: 8 });
  const allowed = fc.oneof(
    listed.map((values) => only(...values)),
    fc.integer({ min: 0, max: 9 }).map(anyFrom),
  );

  test("are every way that is allowed, none less balanced than the one after it", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20 }), allowed, allowed, (spare, bottom, top) => {
        const found = ways(12 + spare, { bottom, top });
        const all = Array.from({ length: spare + 1 }, (_, below) => [below, spare - below]).filter(
          ([below, above]) => allows(bottom, below!) && allows(top, above!),
        );
        expect([...found].sort((a, b) => a[0]! - b[0]!)).toEqual(all);
        const away = found.map(([below, above]) => Math.abs(below! - above!));
        expect(away).toEqual([...away].sort((a, b) => a - b));
      }),
      { numRuns: 100 },
    );
  });

  test("are those at which the motif meets what it has to, and tell how it stands at matched marks", () => {
    // Repeats of 8 begin 4 rows above the bottom margin: whole at row 8 or at row 16 is a margin of 4.
    const meeting = room({
      rows: 24,
      field: field({ toRow: 24, meetings: [{ row: 16, at: "whole" }], matchedRows: [12, 20] }),
    });
    const standings = [...standingsIn({ ...meeting, repeats: 1 })];
    expect(standings).toEqual([
      { bottom: 4, top: 8, phases: [4, 4] },
      { bottom: 12, top: 0, phases: [4, 4] },
    ]);
  });
});

describe("the ways to fill a field", () => {
  test("are the most balanced one of each number of repeats, in the middle of the piece", () => {
    // 28, 20, 12 and 4 rows spare, halved.
    expect(shown(candidatesIn(room()))).toEqual([
      [1, 14, 14, 0],
      [2, 10, 10, 0],
      [3, 6, 6, 0],
      [4, 2, 2, 0],
    ]);
  });

  test("tell what they are made of and what they cost", () => {
    const [one] = candidatesIn(
      room(
        { rows: 41, change: 1, columns: 2, gap: 4, weights: { length: 2 } },
        { repeats: { allowed: only(4) } },
      ),
    );
    // 5 spare rows: 2 below and 3 above. A row of length at 2 and one of balance at 0.5.
    expect(one).toMatchObject({
      change: 1,
      repeats: 4,
      columns: 2,
      gap: 4,
      bottom: 2,
      top: 3,
      phases: [],
      cost: 2.5,
    });
    expect(one!.place).toMatchObject({ repeats: 4, rows: 41, company: 0 });
  });

  test("are none where the panel is wider than the piece at its widest", () => {
    const of = (wide: number) =>
      candidatesIn(room({ footing: footing({ reach: { left: wide, right: wide } }) }));
    expect(of(20)).toHaveLength(4);
    expect(of(21)).toEqual([]);
  });

  test("are less balanced where the most balanced has no room across", () => {
    // Only 2 needles to each side from row 30 on: 3 fit no longer, so 28 rows end at row 29 at the latest.
    const narrowing = counted({
      left: Array.from({ length: 41 }, (_, row) => (row < 30 ? 20 : 2)),
    });
    const pieces = [{ piece: narrowing, fromRow: 0 }];
    expect(shown(candidatesIn(room({ pieces })))).toEqual([
      [1, 14, 14, 0],
      [2, 9, 11, 0],
      [3, 1, 11, 0],
    ]);
  });

  test("keep the least margin at both sides", () => {
    const of = (least: number, left = 20, right = 20) =>
      candidatesIn(
        room(
          {
            pieces: [
              {
                piece: counted({
                  left: counted().left.map(() => left),
                  right: counted().right.map(() => right),
                }),
                fromRow: 0,
              },
            ],
          },
          { ...margins({ sides: { kind: "centred", least } }), repeats: { allowed: only(4) } },
        ),
      );
    // 3 needles of 20 leave 17.
    expect([of(17), of(18)].map(({ length }) => length)).toEqual([1, 0]);
    expect([of(5, 8, 20), of(6, 8, 20), of(5, 20, 8), of(6, 20, 8)].map(({ length }) => length)).toEqual([
      1, 0, 1, 0,
    ]);
  });

  test("stand where the rows of the field lie on the piece", () => {
    // The field begins at row 10 of a piece that narrows at row 36; rows 12 to 48 would be covered.
    const narrowing = counted({
      rows: 60,
      right: Array.from({ length: 61 }, (_, row) => (row < 48 ? 20 : 2)),
    });
    const at = (fromRow: number) =>
      candidatesIn(room({ pieces: [{ piece: narrowing, fromRow }] }, { repeats: { allowed: only(4) } }));
    expect(shown(at(10))).toEqual([[4, 1, 3, 0]]);
    expect(shown(at(9))).toEqual([[4, 2, 2, 0]]);
    expect(at(12)).toEqual([]);
  });

  test("have room wherever the fields below may move them", () => {
    const narrowing = counted({
      rows: 60,
      right: Array.from({ length: 61 }, (_, row) => (row < 48 ? 20 : 2)),
    });
    const pieces = [
      { piece: counted({ rows: 60 }), fromRow: 10 },
      { piece: narrowing, fromRow: 10 },
    ];
    expect(shown(candidatesIn(room({ pieces }, { repeats: { allowed: only(4) } })))).toEqual([[4, 1, 3, 0]]);
    expect(
      shown(candidatesIn(room({ pieces: [...pieces].reverse() }, { repeats: { allowed: only(4) } }))),
    ).toEqual([[4, 1, 3, 0]]);
  });

  test("keep clear of a neck", () => {
    // From row 21 on the neck is open in the middle: the motif ends at row 20.
    const necked = counted({ neck: { row: 20, left: Array(21).fill(5), right: Array(21).fill(5) } });
    expect(shown(candidatesIn(room({ pieces: [{ piece: necked, fromRow: 0 }] })))).toEqual([
      [1, 8, 20, 0],
      [2, 0, 20, 0],
    ]);
  });

  describe("across a piece on which the sides are free", () => {
    const only4: Partial<Placement> = { repeats: { allowed: only(4) } };
    const shifts = (left: Allowed, right: Allowed, more: Partial<Room> = {}): readonly number[] =>
      candidatesIn(room(more, { ...only4, ...free(left, right) })).map(({ shift }) => shift);

    test("stand as near the centre as the margins let them", () => {
      // 34 needles stay free beside the 6 of the panel: 17 and 17 in the centre.
      expect(shifts(anyFrom(0), anyFrom(0))).toEqual([0]);
      expect(shifts(anyFrom(0), only(5))).toEqual([12]);
      expect(shifts(only(5), anyFrom(0))).toEqual([-12]);
      expect(shifts(only(14, 20), anyFrom(0))).toEqual([-3]);
      expect(shifts(only(15, 19), anyFrom(0))).toEqual([-2]);
      expect(shifts(only(5), only(5))).toEqual([]);
      expect(shifts(only(5), only(29))).toEqual([-12]);
    });

    test("stand at the ends of their room as well where another motif may want the same rows", () => {
      expect(shifts(anyFrom(3), anyFrom(5), { company: 1 })).toEqual([0, -14, 12]);
      expect(shifts(only(5), anyFrom(0), { company: 1 })).toEqual([-12]);
      expect(shifts(only(14, 20), anyFrom(0), { company: 1 })).toEqual([-3, 3]);
    });

    test("stand anywhere where several others may, those near the centre first", () => {
      expect(shifts(only(15, 16, 17, 18, 20), anyFrom(0), { company: 2 })).toEqual([0, -1, 1, -2, 3]);
    });

    test("stand on the piece whatever is allowed beside them", () => {
      const all = shifts(anyFrom(0), anyFrom(0), { company: 2 });
      expect([Math.min(...all), Math.max(...all), all.length]).toEqual([-17, 17, 35]);
    });

    test("measure the margins of the panel as it is, mirrored or in columns", () => {
      const reach = { left: 2, right: 4 };
      const lopsided = { columns: 2, gap: 1, footing: footing({ reach }) };
      for (const mirror of [false, true]) {
        const panel = panelOf({ columns: 2, gap: 1, mirror }, reach);
        const [one] = candidatesIn(room(lopsided, { ...only4, mirror, ...free(only(4), anyFrom(0)) }));
        expect(20 + panel.leftEdge + one!.shift).toBe(4);
      }
    });

    test("stand on one half above a neck", () => {
      const necked = counted({ neck: { row: 0, left: Array(41).fill(4), right: Array(41).fill(6) } });
      // 6 needles at the right of the neck's 6: the panel's left edge at 6, its middle at 9; at the left its right edge
      // at -4, its middle at -7.
      const pieces = [{ piece: necked, fromRow: 0 }];
      expect(shifts(anyFrom(0), anyFrom(0), { pieces })).toEqual([-7]);
      expect(shifts(anyFrom(0), anyFrom(0), { pieces, company: 1 })).toEqual([-7, -17, 17]);
      expect(shifts(anyFrom(20), anyFrom(0), { pieces })).toEqual([9]);
    });

    test("have room on each of the pieces that the fields below may make", () => {
      const left = counted({ left: counted().left.map(() => 10) });
      const right = counted({ right: counted().right.map(() => 12) });
      const pieces = [left, right].map((one: CountedPiece) => ({ piece: one, fromRow: 0 }));
      const all = shifts(anyFrom(0), anyFrom(0), { pieces, company: 2 });
      // At least 3 needles from the left edge at 10, and from the right edge at 12.
      expect([Math.min(...all), Math.max(...all), all.length]).toEqual([-7, 9, 17]);
    });
  });

  test("that cost more than what is let go in any case are not made", () => {
    const [lopsided, even] = [margins({ bottom: only(4), top: only(0) }), margins({})];
    const of = (more: Pick<Placement, "margins">, dearest: number) =>
      candidatesIn(room({ dearest }, { ...more, repeats: { allowed: only(4) } })).length;
    // 4 rows of balance at 0.5 each.
    expect([of(lopsided, 2), of(lopsided, 1.9), of(even, 0)]).toEqual([1, 0, 1]);
  });

  test("are one for each way to stand at a matched mark, the most balanced of each", () => {
    const matched = room({
      field: field({ matchedRows: [20], placement: placement({ repeats: { allowed: only(4) } }) }),
    });
    // 4 spare rows, so the first repeat begins at 4 to 8 rows and the mark is 0 to 4 rows into one.
    expect(candidatesIn(matched).map(({ bottom, phases }) => [bottom, phases])).toEqual([
      [2, [6]],
      [1, [7]],
      [3, [5]],
      [0, [0]],
      [4, [4]],
    ]);
    const twice = room({
      rows: 24,
      field: field({ toRow: 24, matchedRows: [20], placement: placement({ repeats: { allowed: only(1) } }) }),
    });
    // 12 spare rows, so that 13 bottom margins stand in 8 ways: of those 8 apart the more balanced.
    const found = candidatesIn(twice);
    expect(found).toHaveLength(8);
    expect(found.map(({ bottom }) => bottom)).toEqual([6, 5, 7, 4, 8, 3, 9, 2]);
  });
});

describe("on the rows that its field shares with another", () => {
  /** The most balanced way to stand on each of them, and off it, of 4 repeats in 40 rows. */
  const standings = (
    rows: number,
    first: boolean,
    last: boolean,
    of: Partial<Placement> = {},
    more: object = {},
  ) =>
    candidatesIn(
      room({
        rows,
        field: field({
          sharedRows: { first, last },
          placement: placement({ repeats: { allowed: only(4) }, ...of }),
        }),
        ...more,
      }),
    ).map(({ bottom, top, phases, shift }) => [bottom, top, ...phases, shift]);

  test("a motif is laid as balanced as it can be on each of them and off it", () => {
    // 36 rows are worked of 40, of 37 and of 36.
    expect(standings(40, true, false)).toEqual([
      [2, 2, 0, 0],
      [0, 4, 1, 0],
    ]);
    expect(standings(40, false, true)).toEqual([
      [2, 2, 0, 0],
      [4, 0, 1, 0],
    ]);
    expect(standings(40, true, true)).toEqual([
      [2, 2, 0, 0, 0],
      [0, 4, 1, 0, 0],
      [4, 0, 0, 1, 0],
    ]);
    expect(standings(37, true, true)).toEqual([
      [0, 1, 1, 0, 0],
      [1, 0, 0, 1, 0],
    ]);
    expect(standings(36, true, true)).toEqual([[0, 0, 1, 1, 0]]);
    expect(standings(40, false, false)).toEqual([[2, 2, 0]]);
  });

  test("it may have to make way across as well, and only there", () => {
    const sides = free(anyFrom(0), anyFrom(0));
    expect(standings(40, true, false, sides)).toEqual([
      [2, 2, 0, 0],
      [0, 4, 1, 0],
      [0, 4, 1, -17],
      [0, 4, 1, 17],
    ]);
    expect(standings(36, true, true, sides)).toHaveLength(35);
  });
});

describe("what a layout gives up", () => {
  const terms = (more: Partial<Room>, of: Partial<Placement>, bottom: number, top: number, repeats = 4) =>
    termsOf({ ...room(more, of), repeats }, bottom, top);

  test("is nothing where it is as preferred", () => {
    const preferred = {
      repeats: { allowed: anyFrom(1), prefer: 4 },
      columns: { allowed: anyFrom(1), prefer: 2 },
      gap: { allowed: anyFrom(0), prefer: 3 },
    };
    expect(terms({ columns: 2, gap: 3 }, preferred, 2, 2)).toEqual([]);
    expect(terms({}, {}, 2, 2)).toEqual([]);
  });

  test("is each amount at its weight, for the placement it belongs to", () => {
    const preferred = {
      repeats: { allowed: anyFrom(1), prefer: 6 },
      columns: { allowed: anyFrom(1), prefer: 5 },
      gap: { allowed: anyFrom(0), prefer: 3 },
    };
    const weights = { repeats: 2, gap: 0.25 };
    const place = { ...room({ change: -2, columns: 3, gap: 7, weights }, preferred), repeats: 4 };
    const owned = termsOf({ ...place, field: { ...place.field, index: 3 } }, 1, 4);
    // Weights of 3 and 0.5 unless stated, 1 for what has none of its own.
    expect(owned).toEqual([
      { term: "length", placement: 3, amount: 2, unit: "rows", weight: 3, cost: 6 },
      { term: "balance", placement: 3, amount: 3, unit: "rows", weight: 0.5, cost: 1.5 },
      { term: "repeats", placement: 3, amount: 2, unit: "repeats", weight: 2, cost: 4 },
      { term: "columns", placement: 3, amount: 2, unit: "columns", weight: 1, cost: 2 },
      { term: "gap", placement: 3, amount: 4, unit: "needles", weight: 0.25, cost: 1 },
    ]);
  });

  test("is no gap where there is one column", () => {
    expect(terms({ columns: 1, gap: 7 }, { gap: { allowed: anyFrom(0), prefer: 3 } }, 2, 2)).toEqual([]);
  });
});
