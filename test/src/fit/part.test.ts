import { describe, expect, test } from "vitest";
import type { CountedPiece } from "../../../src/cloth/counted-piece.ts";
import type { FittedPlacement } from "../../../src/fit/fit.ts";
import { withParts } from "../../../src/fit/part.ts";
import { anyFrom, only } from "../../../src/garment/allowed.ts";
import type { Margins, Placement } from "../../../src/garment/garment.ts";
import type { Motif } from "../../../src/motif/motif.ts";
import type { BlockTrace, CableTrace, Trace } from "../../../src/motif/trace.ts";
import { counted, fittedPlacement, garment, placement, trace } from "./support/plain-parts.ts";

const at = (needle: number, row: number) => ({ needle, row, rank: 0 });

const strand = (
  name: string,
  start: number,
  leadIn: number,
  ...repeat: readonly [number, number][]
): BlockTrace => ({
  name,
  start: at(start, 0),
  leadIn: [at(leadIn, 4)],
  repeat: repeat.map(([needle, row]) => at(needle, row)),
});

/** Two strands that change sides every 4 rows, out to 3 needles; a lead-in of 4 rows, repeats of 8. */
const crossed = trace({
  strands: [strand("left", -1, -3, [3, 4], [-3, 8]), strand("right", 1, 3, [-3, 4], [3, 8])],
});

/** One strand that stays on needle 5. */
const straight = trace({ strands: [strand("one", 5, 5, [5, 4], [5, 8])], reach: { left: 0, right: 5 } });

const motif = (kind: Motif["kind"], colours = 1): Motif => ({ kind, colours }) as Motif;

/** 3 repeats from the cast-on on: 4 + 3 x 8 = 28 rows of 40. */
const worked = (of: Trace, changes: Partial<FittedPlacement> = {}, kind = motif("cord")): FittedPlacement =>
  fittedPlacement({
    firstRow: 0,
    lastRow: 28,
    repeats: 3,
    sections: [{ look: { motif: kind, values: new Map(), trace: of, segments: [] }, repeats: 3, joins: [] }],
    ...changes,
  });

const margins = (changes: Partial<Margins>): Pick<Placement, "margins"> => ({
  margins: { ...placement().margins, ...changes },
});

interface Around {
  readonly of?: Partial<Placement>;
  readonly piece?: CountedPiece;
  readonly others?: readonly FittedPlacement[];
}

/** The part that is worked of a placement, undefined where there is none. */
function partOf(fitted: FittedPlacement, { of = {}, piece = counted(), others = [] }: Around = {}) {
  const asked = { unfinished: "part", ...of } as const;
  const placements = [fitted, ...others.map((one, index) => ({ ...one, index: index + 1 }))];
  const own = garment({
    placements: [placement(asked), ...others.map(() => placement())],
  });
  const [first, ...rest] = withParts(own, placements, [counted({ name: "other" }), piece]);
  expect(rest).toEqual(placements.slice(1));
  return first!.part;
}

/** Needles of a piece that has so many from a row on, and 20 below it. */
const narrowFrom = (row: number, needles: number): readonly number[] =>
  Array.from({ length: 41 }, (_, at) => (at < row ? 20 : needles));

describe("an unfinished repeat", () => {
  test("is not worked where its rows are to stay plain", () => {
    const fitted = worked(crossed);
    const own = garment({ placements: [placement({ unfinished: "plain" })] });
    expect(withParts(own, [fitted], [counted()])[0]).toBe(fitted);
  });

  test("goes on hanging by hanging through one repeat more", () => {
    // Both strands are hung at rows 28 + 4 and 28 + 8.
    expect(partOf(worked(crossed))).toEqual({ lastRow: 36, rows: 8, columns: [{ left: 2, right: 2 }] });
  });

  test.each([
    [4, { left: 2, right: 2 }, 36],
    [5, { left: 1, right: 1 }, 32],
    [8, { left: 1, right: 1 }, 32],
  ])("leaves the %s rows that the top margin asks for", (top, column, lastRow) => {
    const of = margins({ top: only(top, 30) });
    expect(partOf(worked(crossed), { of })).toEqual({ lastRow, rows: lastRow - 28, columns: [column] });
  });

  test("is none where not even its first hanging has room", () => {
    const fitted = worked(crossed);
    const own = garment({ placements: [placement({ unfinished: "part", ...margins({ top: anyFrom(9) }) })] });
    const [same] = withParts(own, [fitted], [counted()]);
    expect(same).toBe(fitted);
    expect(same).not.toHaveProperty("part");
  });

  test("ends at the mark of its own field", () => {
    const piece = counted({
      marks: new Map([
        ["cast-on", 0],
        ["middle", 34],
        ["bind-off", 40],
      ]),
    });
    expect(partOf(worked(crossed), { piece, of: { to: "middle" } })).toMatchObject({ lastRow: 32 });
  });

  test("is counted from the row at which its motif begins", () => {
    expect(partOf(worked(crossed, { firstRow: 3, lastRow: 31 }))).toEqual({
      lastRow: 39,
      rows: 8,
      columns: [{ left: 2, right: 2 }],
    });
    expect(partOf(worked(crossed, { firstRow: 5, lastRow: 33 }))).toMatchObject({ lastRow: 37, rows: 4 });
  });

  test("lets each strand go as far as it can", () => {
    const uneven = trace({
      strands: [strand("left", -1, -3, [3, 4], [-3, 8]), strand("right", 1, 3, [-3, 2], [3, 6])],
    });
    // Rows 32 and 36, and rows 30 and 34: 35 is the last that the margin leaves.
    expect(partOf(worked(uneven), { of: margins({ top: anyFrom(5) }) })).toEqual({
      lastRow: 34,
      rows: 6,
      columns: [{ left: 1, right: 2 }],
    });
  });

  test("goes on with the look of the last section", () => {
    const [small, wide] = [
      crossed,
      trace({ repeatRows: 10, strands: [strand("left", -1, -3, [6, 5], [-6, 10])] }),
    ];
    const look = (of: Trace) => ({ motif: motif("cord"), values: new Map(), trace: of, segments: [] });
    const fitted = worked(small, {
      // 4 + 8 + 10 rows.
      lastRow: 22,
      sections: [
        { look: look({ ...small, strands: small.strands.slice(0, 1) }), repeats: 1, joins: [] },
        { look: look(wide), repeats: 1, joins: [] },
      ],
    });
    expect(partOf(fitted)).toEqual({ lastRow: 32, rows: 10, columns: [{ left: 2 }] });
    // 6 needles out of 20 leave 14.
    expect(partOf(fitted, { of: margins({ sides: { kind: "centred", least: 14 } }) })).toMatchObject({
      rows: 10,
    });
    expect(partOf(fitted, { of: margins({ sides: { kind: "centred", least: 15 } }) })).toBeUndefined();
  });
});

describe("at the sides an unfinished repeat", () => {
  const leaving = (least: number, piece?: CountedPiece) =>
    partOf(worked(crossed), { of: margins({ sides: { kind: "centred", least } }), ...(piece && { piece }) });

  test("leaves the needles that are asked for at least", () => {
    expect(leaving(17)).toMatchObject({ lastRow: 36 });
    expect(leaving(18)).toBeUndefined();
  });

  test("stops strand by strand where the piece becomes too narrow", () => {
    // From row 32 on 3 needles at the right: the left strand would be hung on R3 at row 32, the right one at row 36.
    const right = counted({ right: narrowFrom(32, 3) });
    expect(leaving(0, right)).toMatchObject({ lastRow: 36 });
    expect(leaving(1, right)).toEqual({ lastRow: 32, rows: 4, columns: [{ left: 0, right: 1 }] });
    const left = counted({ left: narrowFrom(32, 3) });
    expect(leaving(0, left)).toMatchObject({ lastRow: 36 });
    expect(leaving(1, left)).toEqual({ lastRow: 32, rows: 4, columns: [{ left: 1, right: 0 }] });
  });

  test("keeps to each side's own margin where they differ", () => {
    const free = (left: number, right: number) =>
      partOf(worked(crossed), {
        of: margins({ sides: { kind: "free", left: only(left, 19), right: only(right, 19) } }),
      })?.columns[0];
    expect(free(17, 17)).toEqual({ left: 2, right: 2 });
    expect(free(18, 0)).toEqual({ left: 1, right: 0 });
    expect(free(0, 18)).toEqual({ left: 0, right: 1 });
  });

  test("stands where its column does", () => {
    const two = worked(crossed, {
      columns: 2,
      panel: { centres: [-10, 14], mirrored: 0, leftEdge: -13, rightEdge: 17 },
    });
    expect(partOf(two)).toEqual({
      lastRow: 36,
      rows: 8,
      columns: [
        { left: 2, right: 2 },
        { left: 2, right: 2 },
      ],
    });
    // 3 needles beyond the right column's centre at 14 are 17 of 20.
    const of = margins({ sides: { kind: "centred", least: 4 } });
    expect(partOf(two, { of })).toEqual({
      lastRow: 36,
      rows: 8,
      columns: [
        { left: 2, right: 2 },
        { left: 0, right: 1 },
      ],
    });
  });

  test("is the mirror image where its column is", () => {
    // One strand that goes out to R6 in each repeat and back to R1.
    const lopsided = trace({ strands: [strand("one", 1, 1, [6, 4], [1, 8])] });
    const panel = { centres: [-10, 14], mirrored: 1, leftEdge: -11, rightEdge: 20 };
    const plain = worked(lopsided, { columns: 2, panel: { ...panel, mirrored: 0 } });
    const turned = worked(lopsided, { columns: 2, panel });
    // Unmirrored it is hung on needle 14 + 6 = 20, mirrored on 14 - 6 = 8.
    const of = margins({ sides: { kind: "centred", least: 1 } });
    expect(partOf(plain, { of })?.columns).toEqual([{ one: 2 }, { one: 0 }]);
    expect(partOf(turned, { of })?.columns).toEqual([{ one: 2 }, { one: 2 }]);
  });
});

describe("above a neck an unfinished repeat", () => {
  const neck = (row: number, left: number, right = left): CountedPiece =>
    counted({
      neck: { row, left: Array(41 - row).fill(left), right: Array(41 - row).fill(right) },
    });

  test("does not cross the opening, and may end on the neck's own row", () => {
    expect(partOf(worked(crossed), { piece: neck(31, 1) })).toBeUndefined();
    expect(partOf(worked(crossed), { piece: neck(32, 1) })).toMatchObject({ lastRow: 32 });
    expect(partOf(worked(crossed), { piece: neck(36, 1) })).toMatchObject({ lastRow: 36 });
  });

  test("goes on where it lies on one half, hanging and the one before it", () => {
    // Needle R5 lies between 4 and 5 needles from the centre.
    expect(partOf(worked(straight), { piece: neck(30, 9, 4) })).toMatchObject({ lastRow: 36 });
    expect(partOf(worked(straight), { piece: neck(30, 4, 5) })).toBeUndefined();
    const left = trace({ strands: [strand("one", -5, -5, [-5, 4], [-5, 8])] });
    expect(partOf(worked(left), { piece: neck(30, 4, 9) })).toMatchObject({ lastRow: 36 });
    expect(partOf(worked(left), { piece: neck(30, 5, 4) })).toBeUndefined();
  });

  test("stops where the opening widens", () => {
    const widening = counted({
      neck: { row: 30, left: Array(11).fill(0), right: [0, 2, 4, 4, 4, 5, 5, 5, 5, 5, 5] },
    });
    // 4 needles up to row 34, 5 from row 35 on.
    expect(partOf(worked(straight), { piece: widening })).toMatchObject({ lastRow: 32 });
  });
});

describe("beside other motifs an unfinished repeat", () => {
  const other = (
    firstRow: number,
    lastRow: number,
    leftEdge = -3,
    rightEdge = 3,
    name = "panel",
  ): FittedPlacement =>
    fittedPlacement({
      piece: name,
      firstRow,
      lastRow,
      panel: { centres: [0], mirrored: 0, leftEdge, rightEdge },
    });
  const beside = (...others: readonly FittedPlacement[]) => partOf(worked(crossed), { others })?.lastRow;

  test("keeps clear of what begins above, on the way to each hanging", () => {
    expect(beside(other(37, 40))).toBe(36);
    expect(beside(other(36, 40))).toBe(32);
    // On the way from row 32 to row 36.
    expect(beside(other(33, 40))).toBe(32);
    expect(beside(other(32, 40))).toBeUndefined();
    expect(beside(other(34, 34))).toBe(32);
  });

  test("begins above what ends where its last whole repeat does", () => {
    expect([beside(other(20, 28)), beside(other(20, 29))]).toEqual([36, undefined]);
  });

  test("goes on beside what lies clear of its way", () => {
    // The way from L3 to R3 takes the needles from 3 left of the centre to 3 right of it.
    expect([beside(other(30, 40, 3, 9)), beside(other(30, 40, -9, -3))]).toEqual([36, 36]);
    expect([beside(other(30, 40, 2, 9)), beside(other(30, 40, -9, -2))]).toEqual([undefined, undefined]);
  });

  test("keeps clear of all of them, and of none on another piece", () => {
    expect(beside(other(37, 40), other(33, 40))).toBe(32);
    expect(beside(other(30, 40, -3, 3, "other"))).toBe(36);
  });
});

describe("an unfinished cable", () => {
  const cable = (needle: number, left: number, right: number): CableTrace => ({
    name: "rope",
    left,
    right,
    start: at(needle, 0),
    leadIn: [],
    repeat: [at(needle, 4), at(needle, 8)],
  });
  const roped = (changes: Partial<Trace> = {}): FittedPlacement =>
    worked(trace({ leadRows: 4, cables: [cable(1, 2, 3)], ...changes }), {}, motif("cable"));

  test("goes on crossing by crossing", () => {
    expect(partOf(roped())).toEqual({ lastRow: 36, rows: 8, columns: [{ rope: 2 }] });
    expect(partOf(roped(), { of: margins({ top: anyFrom(6) }) })).toMatchObject({ columns: [{ rope: 1 }] });
  });

  test("leaves the needles free beside all that it crosses", () => {
    // Its middle one needle right of the centre: 2 to the left of that, -1; 3 to the right, 4.
    const free = (left: number, right: number) =>
      partOf(roped(), {
        of: margins({ sides: { kind: "free", left: anyFrom(left), right: anyFrom(right) } }),
      })?.rows;
    expect([free(19, 16), free(20, 0), free(0, 17)]).toEqual([8, undefined, undefined]);
  });

  test("crosses with each cable what that one crosses", () => {
    const two = roped({ cables: [cable(1, 2, 3), { ...cable(10, 4, 4), name: "wide" }] });
    // The wide one reaches 14 needles to the right, the other 4.
    const free = (least: number) =>
      partOf(two, { of: margins({ sides: { kind: "free", left: anyFrom(0), right: anyFrom(least) } }) })
        ?.columns[0];
    expect([free(6), free(7)]).toEqual([
      { rope: 2, wide: 2 },
      { rope: 2, wide: 0 },
    ]);
  });

  test("goes on as far as its ladders have room, each with the needle outward of it", () => {
    const laddered = roped({
      ladders: [
        { needle: 5, onto: 6 },
        { needle: -4, onto: -5 },
      ],
    });
    expect(partOf(laddered)).toMatchObject({ lastRow: 36 });
    const rightFrom = (row: number, needles: number) =>
      partOf(laddered, { piece: counted({ right: narrowFrom(row, needles) }) })?.lastRow;
    // R5 and the needle beyond it are 6 from the centre; the cable itself needs 4.
    expect([
      rightFrom(29, 6),
      rightFrom(29, 5),
      rightFrom(33, 5),
      rightFrom(36, 5),
      rightFrom(37, 5),
    ]).toEqual([36, undefined, 32, 32, 36]);
    const leftFrom = (row: number, needles: number) =>
      partOf(laddered, { piece: counted({ left: narrowFrom(row, needles) }) })?.lastRow;
    // L4 and the needle beyond it are 5.
    expect([leftFrom(29, 5), leftFrom(29, 4), leftFrom(33, 4)]).toEqual([36, undefined, 32]);
  });

  test("is ended by a ladder that would meet another motif", () => {
    const laddered = roped({ ladders: [{ needle: 5, onto: 6 }] });
    const others = [
      fittedPlacement({
        firstRow: 34,
        lastRow: 34,
        panel: { centres: [], mirrored: 0, leftEdge: 5, rightEdge: 9 },
      }),
    ];
    expect(partOf(laddered, { others })).toMatchObject({ lastRow: 32 });
    const clear = others.map((one) => ({ ...one, panel: { ...one.panel, leftEdge: 6 } }));
    expect(partOf(laddered, { others: clear })).toMatchObject({ lastRow: 36 });
    // What lies beside the rows below the part is nothing to it.
    const below = others.map((one) => ({ ...one, firstRow: 10, lastRow: 20 }));
    expect(partOf(laddered, { others: below })).toMatchObject({ lastRow: 36 });
  });
});

describe("an unfinished band", () => {
  const band = (colours = 1, changes: Partial<FittedPlacement> = {}): FittedPlacement =>
    worked(
      trace(),
      { panel: { centres: [-4, 4], mirrored: 0, leftEdge: -8, rightEdge: 8 }, ...changes },
      motif("band", colours),
    );

  test("goes on row by row, by no more than a repeat", () => {
    expect(partOf(band())).toEqual({ lastRow: 36, rows: 8, columns: [] });
    expect(partOf(band(), { of: margins({ top: anyFrom(7) }) })).toEqual({
      lastRow: 33,
      rows: 5,
      columns: [],
    });
    expect(partOf(band(), { of: margins({ top: anyFrom(12) }) })).toBeUndefined();
  });

  test("in several colours is worked forth and back", () => {
    const rows = (top: number) => partOf(band(2), { of: margins({ top: anyFrom(top) }) })?.rows;
    // 5, 4 and 1 rows have room.
    expect([rows(7), rows(8), rows(11)]).toEqual([4, 4, undefined]);
  });

  test("keeps its margins at both edges of the panel", () => {
    const rows = (piece: CountedPiece) => partOf(band(), { piece })?.rows;
    expect([rows(counted({ left: narrowFrom(31, 8) })), rows(counted({ left: narrowFrom(31, 7) }))]).toEqual([
      8, 2,
    ]);
    expect([
      rows(counted({ right: narrowFrom(31, 8) })),
      rows(counted({ right: narrowFrom(31, 7) })),
    ]).toEqual([8, 2]);
  });

  test("ends below what lies on the same needles", () => {
    const other = (leftEdge: number) =>
      fittedPlacement({ firstRow: 32, panel: { centres: [], mirrored: 0, leftEdge, rightEdge: 12 } });
    expect(partOf(band(), { others: [other(7)] })?.rows).toBe(3);
    expect(partOf(band(), { others: [other(8)] })?.rows).toBe(8);
  });

  test("goes on with the repeat of its last section", () => {
    const look = (of: Trace) => ({ motif: motif("band"), values: new Map(), trace: of, segments: [] });
    const sections = [trace(), trace({ repeatRows: 6 })].map((of) => ({
      look: look(of),
      repeats: 1,
      joins: [],
    }));
    expect(partOf(band(1, { sections, lastRow: 18 }))).toEqual({ lastRow: 24, rows: 6, columns: [] });
  });
});
