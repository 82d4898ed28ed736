import { describe, expect, test } from "vitest";
import {
  createPieceCounter,
  type Field,
  fieldsOf,
  neighbours,
  relation,
  stretchesOf,
  stretchOf,
} from "../../../src/fit/field.ts";
import { anyFrom, only } from "../../../src/garment/allowed.ts";
import type { Garment, Piece, Placement } from "../../../src/garment/garment.ts";
import { field, garment, piece, placement, stitch } from "./support/plain-parts.ts";

/** Rows are 4 mm high: marks at rows 10, 20 and 30 of 40. */
const marked = (changes: Partial<Piece> = {}): Piece =>
  piece({
    marks: [...piece().marks, ...[10, 20, 30].map((row) => ({ name: `row ${row}`, heightMm: 4 * row }))],
    ...changes,
  });

const fieldsWith = (
  placements: readonly Partial<Placement>[],
  changes: Partial<Piece> = {},
  more: Partial<Garment> = {},
): readonly Field[] =>
  fieldsOf(garment({ pieces: [marked(changes)], placements: placements.map(placement), ...more }));

const changesOf = (fields: readonly Field[]): readonly (readonly [number, number])[] =>
  fields.map(({ leastChange, mostChange }) => [leastChange, mostChange]);

describe("a field", () => {
  test("lies between the rows of its marks and knows its piece", () => {
    const [one] = fieldsWith([{ from: "row 10", to: "row 30" }]);
    expect(one).toMatchObject({ index: 0, fromRow: 10, toRow: 30, piece: { name: "panel" } });
    expect(one).not.toHaveProperty("steadyChanges");
  });

  test("is one of the piece that its placement names", () => {
    const pieces = [piece({ name: "sleeve", growMm: 40 }), marked()];
    const fields = fieldsOf(garment({ pieces, placements: [placement(), placement({ piece: "sleeve" })] }));
    expect(fields.map(({ piece: own, mostChange }) => [own.name, mostChange])).toEqual([
      ["panel", 0],
      ["sleeve", 10],
    ]);
  });

  test("changes by whole rows, both limits rounded down", () => {
    // 15 mm are 3.75 rows, 9 mm are 2.25.
    expect(changesOf(fieldsWith([{}], { growMm: 15, shrinkMm: 9 }))).toEqual([[-2, 3]]);
    expect(changesOf(fieldsWith([{}]))).toEqual([[-0, 0]]);
  });

  test("never shrinks to nothing", () => {
    // 10 rows between the two marks: 9 of them can go, though 160 mm may.
    expect(changesOf(fieldsWith([{ from: "row 10", to: "row 20" }], { shrinkMm: 160 }))).toEqual([[-9, 0]]);
    const upsideDown = fieldsWith([{ from: "row 20", to: "row 10" }], { shrinkMm: 160 });
    expect(Math.abs(upsideDown[0]!.leastChange)).toBe(0);
  });

  test("knows the rows at which its motif has to meet something", () => {
    const meet = [
      { mark: "row 20", at: "half" as const },
      { mark: "row 30", at: { rows: 2 } },
    ];
    expect(fieldsWith([{ meet }])[0]!.meetings).toEqual([
      { row: 20, at: "half" },
      { row: 30, at: { rows: 2 } },
    ]);
  });

  test("knows the rows of the matches that name it, and of no other", () => {
    const matches = [
      { path: [], mark: "row 30", placements: [0, 1] },
      { path: [], mark: "row 20", placements: [1, 2] },
      { path: [], mark: "row 10", placements: [2, 0] },
    ];
    const fields = fieldsWith([{}, {}, {}], {}, { matches });
    expect(fields.map(({ matchedRows }) => matchedRows)).toEqual([
      [30, 10],
      [30, 20],
      [20, 10],
    ]);
  });
});

describe("two fields of one piece", () => {
  const between = (fromRow: number, toRow: number): Field => field({ fromRow, toRow });

  test.each([
    ["between the same marks", between(10, 20), between(10, 20), "same"],
    ["one above the other", between(0, 10), between(20, 30), "apart"],
    ["one ending where the other begins", between(0, 20), between(20, 30), "apart"],
    ["sharing a row", between(0, 21), between(20, 30), "overlapping"],
    ["one within the other", between(0, 40), between(10, 20), "overlapping"],
    ["beginning alike", between(0, 40), between(0, 20), "overlapping"],
    ["ending alike", between(0, 40), between(20, 40), "overlapping"],
  ])("%s", (_, one, other, expected) => {
    expect([relation(one, other), relation(other, one)]).toEqual([expected, expected]);
  });

  test("are neighbours, and neither those of another piece nor itself", () => {
    const shared = piece();
    const fields = [shared, piece(), shared, shared].map((of, index) => field({ index, piece: of }));
    expect(neighbours(fields[2]!, fields).map(({ index }) => index)).toEqual([0, 3]);
    expect(neighbours(fields[1]!, fields)).toEqual([]);
  });

  test("keep their length where they overlap, and change it where they are one or apart", () => {
    const growing = { growMm: 20, shrinkMm: 8 };
    const of = (...marks: readonly (readonly [string, string])[]) =>
      changesOf(
        fieldsWith(
          marks.map(([from, to]) => ({ from, to })),
          growing,
        ),
      );
    expect(of(["cast-on", "row 20"], ["row 10", "row 30"])).toEqual([
      [0, 0],
      [0, 0],
    ]);
    expect(of(["cast-on", "row 20"], ["row 20", "bind-off"])).toEqual([
      [-2, 5],
      [-2, 5],
    ]);
    expect(of(["row 10", "row 30"], ["row 10", "row 30"])).toEqual([
      [-2, 5],
      [-2, 5],
    ]);
    // Only those that overlap keep it.
    expect(of(["cast-on", "row 10"], ["row 10", "row 30"], ["row 20", "bind-off"])).toEqual([
      [-2, 5],
      [0, 0],
      [0, 0],
    ]);
  });
});

describe("the row between two fields", () => {
  const stacked = (low: Partial<Placement>, high: Partial<Placement>, to = "row 20", from = "row 20") =>
    fieldsWith([
      { from: "cast-on", to, ...low },
      { from, to: "bind-off", ...high },
    ]).map(({ sharedRows }) => sharedRows);
  const margins = (changes: object): Pick<Placement, "margins"> => ({
    margins: { ...placement().margins, ...changes },
  });

  test("is shared by both where neither has to leave a margin", () => {
    expect(stacked({}, {})).toEqual([
      { first: false, last: true },
      { first: true, last: false },
    ]);
    expect(
      fieldsWith([{ to: "row 20" }, { from: "row 20", to: "row 30" }, { from: "row 30" }])[1],
    ).toMatchObject({
      sharedRows: { first: true, last: true },
    });
  });

  test("is not shared where one of them leaves a margin in any case, or they do not adjoin", () => {
    expect(stacked(margins({ top: anyFrom(1) }), {})).toEqual([undefined, undefined]);
    expect(stacked({}, margins({ bottom: only(2, 4) }))).toEqual([undefined, undefined]);
    expect(stacked({}, {}, "row 10")).toEqual([undefined, undefined]);
    expect(stacked({}, {}, "row 30")).toEqual([undefined, undefined]);
    // What is beyond its other end does not matter.
    expect(stacked(margins({ bottom: anyFrom(1) }), margins({ top: anyFrom(1) }))[0]).toEqual({
      first: false,
      last: true,
    });
  });
});

describe("where the length has to keep its limits at every gauge", () => {
  // Rows told as 15 in 60 mm, 20 % off at most: 12 to 18 rows in 60 mm, a row 3.33 to 5 mm high.
  const steady = {
    steady: 1,
    gauge: {
      ground: { stitches: 20, rows: 15, overMm: 60, within: { stitches: 0.2, rows: 0.2 } },
    },
  };
  const limits = { growMm: 40, shrinkMm: 40, limitsLength: true };
  const shortMarks = [...piece().marks, { name: "row 4", heightMm: 16 }];

  test("a field that is alone changes as its piece may", () => {
    const [one] = fieldsWith([{}], limits, steady);
    // Most 200 mm in rows of 5 mm, 40 rows; least 120 mm in rows of 3 1/3 mm, 36 rows.
    expect(one!.steadyChanges).toEqual({ least: -4, most: 0 });
    expect([one!.leastChange, one!.mostChange]).toEqual([-4, 0]);
  });

  test("a field changes by no more than its own limits, whatever its piece may", () => {
    // Of 4 rows no more than 3 can go, though the piece may lose 4.
    const [one] = fieldsWith([{ from: "cast-on", to: "row 4" }], { ...limits, marks: shortMarks }, steady);
    expect([one!.leastChange, one!.mostChange]).toEqual([-3, 0]);
  });

  test("fields apart keep their own limits, and the piece's beside them", () => {
    const fields = fieldsWith(
      [
        { from: "cast-on", to: "row 20" },
        { from: "row 20", to: "bind-off" },
      ],
      limits,
      steady,
    );
    expect(changesOf(fields)).toEqual([
      [-10, 10],
      [-10, 10],
    ]);
    expect(fields.every(({ steadyChanges }) => steadyChanges !== undefined)).toBe(true);
  });

  test("two on one field are as one that is alone", () => {
    const [alone] = fieldsWith([{}], limits, steady);
    for (const one of fieldsWith([{}, {}], limits, steady))
      expect([one.leastChange, one.mostChange]).toEqual([alone!.leastChange, alone!.mostChange]);
  });
});

describe("the stretches of a piece", () => {
  test("are those of its fields that change, and of fields that are one only once", () => {
    const fields = [
      field({ index: 0, fromRow: 0, toRow: 10 }),
      field({ index: 1, fromRow: 10, toRow: 20 }),
      field({ index: 2, fromRow: 10, toRow: 20 }),
      field({ index: 3, fromRow: 20, toRow: 40 }),
    ];
    const changes = [3, -2, -2, 0];
    expect(stretchesOf(fields, ({ index }) => changes[index]!)).toEqual([
      { fromRow: 0, toRow: 10, change: 3 },
      { fromRow: 10, toRow: 20, change: -2 },
    ]);
    expect(stretchOf(fields[1]!, 5)).toEqual({ fromRow: 10, toRow: 20, change: 5 });
  });
});

describe("counting a piece again and again", () => {
  const stretch = { fromRow: 0, toRow: 40, change: 4 };

  test("is done once for each name, set of stretches and number of needles", () => {
    const count = createPieceCounter(stitch);
    const plain = count(piece(), [], 0);
    expect(count(piece(), [], 0)).toBe(plain);
    // A stretch that keeps its length leaves the piece as it was drawn.
    expect(count(piece(), [{ ...stretch, change: 0 }], 0)).toBe(plain);
    expect(count(piece(), [stretch], 0).rows).toBe(44);
    expect(count(piece(), [], 2).left[0]).toBe(22);
    expect(count(piece({ name: "other" }), [], 0).name).toBe("other");
    expect(count(piece(), [], 0)).toBe(plain);
    expect([plain.rows, plain.left[0]]).toEqual([40, 20]);
  });

  test("lets go of what it kept once there are too many rows", () => {
    // Room for 84 rows: a piece of 40 and one of 44 are kept, a third one leaves room for itself alone.
    const count = createPieceCounter(stitch, 84);
    const [plain, longer] = [count(piece(), [], 0), count(piece(), [stretch], 0)];
    expect([count(piece(), [], 0), count(piece(), [stretch], 0)]).toEqual([plain, longer]);
    expect(count(piece(), [], 0)).toBe(plain);
    const wider = count(piece(), [], 1);
    expect(count(piece(), [], 1)).toBe(wider);
    const again = count(piece(), [], 0);
    expect(again).not.toBe(plain);
    expect(again).toEqual(plain);
    // 40 rows and 40 are 80: both are kept, and the next ones of 44 are too many once more.
    expect(count(piece(), [], 1)).toBe(wider);
    count(piece(), [stretch], 0);
    expect(count(piece(), [], 1)).not.toBe(wider);
  });
});
