import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type CountedNeck,
  type CountedPiece,
  countPiece,
  fitsBed,
  halfNeedlesAt,
  mayStepAt,
  needlesAt,
  rowOf,
  stationNeedles,
  stretched,
} from "../../../src/cloth/counted-piece.ts";
import { groundStitch } from "../../../src/cloth/gauge.ts";
import type { Piece } from "../../../src/garment/garment.ts";

const stitch = groundStitch({ ground: { stitches: 22, rows: 31, overMm: 100 } });

const sleeve: Piece = {
  name: "sleeve",
  path: ["pieces", "sleeve"],
  outline: [
    { heightMm: 0, widthMm: 200 },
    { heightMm: 330, widthMm: 310 },
    { heightMm: 360, widthMm: 310 },
  ],
  marks: [
    { name: "cast-on", heightMm: 0 },
    { name: "rib top", heightMm: 40 },
    { name: "underarm", heightMm: 330 },
    { name: "bind-off", heightMm: 360 },
  ],
  neck: [],
  growMm: 10,
  shrinkMm: 10,
  carriage: "right",
};

describe("countPiece", () => {
  test("counts stations to the nearest needle and row", () => {
    const counted = countPiece(sleeve, stitch);
    expect(counted.rows).toBe(112);
    expect([...counted.marks.values()]).toEqual([0, 12, 102, 112]);
    expect(needlesAt(counted, 0)).toEqual([-22, 22]);
    expect(needlesAt(counted, 102)).toEqual([-34, 34]);
  });

  test("stretches the rows of a field and moves what lies above it", () => {
    const longer = countPiece(sleeve, stitch, [{ fromRow: 12, toRow: 102, change: 3 }]);
    expect([...longer.marks.values()]).toEqual([0, 12, 105, 115]);
    expect(longer.rows).toBe(115);
  });

  test("adds the same needles at both sides for what cables draw in", () => {
    const wider = countPiece(sleeve, stitch, [], 2);
    expect(wider.left).toEqual(countPiece(sleeve, stitch).left.map((needles) => needles + 2));
  });

  test("cuts a neck out around the centre, each half from its own side", () => {
    const neck = [
      { heightMm: 300, widthMm: 60 },
      { heightMm: 340, widthMm: 120 },
    ];
    const counted = countPiece({ ...sleeve, neck }, stitch);
    expect(counted.neck?.row).toBe(rowOf(300, stitch));
    expect(counted.neck?.left[0]).toBe(7);
    expect(counted.neck?.left.at(-1)).toBe(13);
    expect(counted.neck?.right.at(-1)).toBe(13);
  });

  test("never changes several needles away from the carriage", () => {
    const widths = fc.array(fc.integer({ min: 20, max: 500 }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(widths, fc.constantFrom("left" as const, "right" as const), (mm, carriage) => {
        const outline = mm.map((widthMm, index) => ({ heightMm: 30 * Math.ceil(index / 2) * 2, widthMm }));
        const counted = countPiece({ ...sleeve, outline, marks: [], carriage }, stitch);
        const wrong = (["left", "right"] as const).flatMap((side) =>
          counted[side].filter(
            (needles, row) =>
              Math.abs(needles - (counted[side][row - 1] ?? needles)) > 1 &&
              (row % 2 === 0) !== (carriage === side),
          ),
        );
        expect(wrong).toEqual([]);
      }),
      { seed: 7, numRuns: 200 },
    );
  });
});

describe("a piece that is counted in the head", () => {
  /** Stitches of 5 mm by 4 mm. */
  const easy = { widthMm: 5, heightMm: 4 };
  const strip: Piece = {
    ...sleeve,
    outline: [
      { heightMm: 0, leftMm: 50, rightMm: 60 },
      { heightMm: 160, leftMm: 50, rightMm: 60 },
    ],
    marks: [{ name: "fold", heightMm: 60 }],
  };

  test("has each side's own needles where the outline says so", () => {
    const { name, rows, carriage, left, right, marks, neck } = countPiece(strip, easy);
    expect({ name, rows, carriage, neck }).toEqual({
      name: "sleeve",
      rows: 40,
      carriage: "right",
      neck: undefined,
    });
    expect([left, right]).toEqual([Array(41).fill(10), Array(41).fill(12)]);
    expect([...marks]).toEqual([["fold", 15]]);
    const [station] = strip.outline;
    expect([stationNeedles(station!, "left", easy), stationNeedles(station!, "right", easy)]).toEqual([
      10, 12,
    ]);
    expect(stationNeedles({ heightMm: 0, widthMm: 100 }, "left", easy)).toBe(10);
    expect(rowOf(18, easy)).toBe(5);
  });

  test("changes several needles at once at the side where the carriage rests", () => {
    const step = (carriage: Piece["carriage"]) =>
      countPiece(
        {
          ...strip,
          carriage,
          outline: [
            { heightMm: 0, widthMm: 100 },
            { heightMm: 20, widthMm: 100 },
            { heightMm: 20, widthMm: 60 },
            { heightMm: 160, widthMm: 60 },
          ],
        },
        easy,
      );
    // Asked for at row 5, when a carriage that started at the right is at the left.
    const changes = ({ left, right }: CountedPiece) => [left.indexOf(6), right.indexOf(6)];
    expect(changes(step("right"))).toEqual([5, 6]);
    expect(changes(step("left"))).toEqual([6, 5]);
  });

  test("changes single needles on even rows only where that is asked for", () => {
    const outline = [
      { heightMm: 0, widthMm: 100 },
      { heightMm: 40, widthMm: 110 },
      { heightMm: 160, widthMm: 110 },
    ];
    // One needle in ten rows: after five.
    const at = (shapingOn?: Piece["shapingOn"]) =>
      countPiece({ ...strip, outline, ...(shapingOn && { shapingOn }) }, easy).left.indexOf(11);
    expect([at(), at("any row"), at("even rows")]).toEqual([5, 5, 6]);
    expect([
      mayStepAt({}, 5),
      mayStepAt({ shapingOn: "even rows" }, 5),
      mayStepAt({ shapingOn: "even rows" }, 6),
    ]).toEqual([true, false, true]);
  });

  test("binds off a neck at each half from the side away from it", () => {
    const neck = [
      { heightMm: 100, widthMm: 20 },
      { heightMm: 108, widthMm: 20 },
      { heightMm: 108, widthMm: 60 },
      { heightMm: 160, widthMm: 60 },
    ];
    // Four needles more are asked for at row 27, when a carriage that started at the right is at the left.
    const opening = (carriage: Piece["carriage"]) => countPiece({ ...strip, neck, carriage }, easy).neck!;
    expect(opening("right").row).toBe(25);
    expect(opening("right").left.slice(0, 5)).toEqual([2, 2, 2, 6, 6]);
    expect(opening("right").right.slice(0, 5)).toEqual([2, 2, 6, 6, 6]);
    expect(opening("left").left.slice(0, 5)).toEqual([2, 2, 6, 6, 6]);
    expect(opening("right").left).toHaveLength(40 - 25 + 1);
  });

  test("shapes a neck on even rows only where that is asked for", () => {
    const neck = [
      { heightMm: 100, widthMm: 20 },
      { heightMm: 116, widthMm: 30 },
      { heightMm: 160, widthMm: 30 },
    ];
    // One needle in four rows: after two, at row 27.
    const at = (shapingOn: Piece["shapingOn"] & {}) =>
      countPiece({ ...strip, neck, shapingOn }, easy).neck!.left.indexOf(3);
    expect([at("any row"), at("even rows")]).toEqual([2, 3]);
  });

  test("moves its rows, its marks and its neck where it is lengthened or shortened", () => {
    const neck = [
      { heightMm: 120, widthMm: 20 },
      { heightMm: 160, widthMm: 20 },
    ];
    const longer = countPiece({ ...strip, neck }, easy, [{ fromRow: 10, toRow: 20, change: 5 }]);
    // Row 15, halfway up, is at 10 + 5 * 15 / 10 = 17.5, which is 18.
    expect([longer.rows, longer.marks.get("fold"), longer.neck?.row]).toEqual([45, 18, 35]);
  });

  test("is worked over all its needles, and above its neck in two halves", () => {
    const neck: CountedNeck = { row: 4, left: [2, 3], right: [1, 5] };
    const piece = { ...countPiece(strip, easy), neck };
    expect(needlesAt(piece, 5)).toEqual([-10, 12]);
    expect(halfNeedlesAt(piece, "left", 5)).toEqual([-10, -4]);
    expect(halfNeedlesAt(piece, "right", 5)).toEqual([6, 12]);
    expect(halfNeedlesAt(piece, "left", 4)).toEqual([-10, -3]);
    expect(halfNeedlesAt(piece, "right", 4)).toEqual([2, 12]);
  });

  test("has a needle for every stitch where the bed is wide enough at both sides", () => {
    const piece = countPiece(strip, easy);
    const bed = { needles: 21, carriage: "right" } as const;
    const of = (left: number, right: number): CountedPiece => ({
      ...piece,
      left: [1, left, 1],
      right: [1, right, 1],
    });
    // 10 needles at the left and 11 at the right.
    expect(fitsBed(of(10, 11), bed)).toBe(true);
    expect(fitsBed(of(11, 11), bed)).toBe(false);
    expect(fitsBed(of(10, 12), bed)).toBe(false);
    expect(fitsBed(of(11, 12), bed)).toBe(false);
  });
});

describe("a row of a piece that is lengthened or shortened", () => {
  const stretches = [
    { fromRow: 10, toRow: 20, change: 5 },
    { fromRow: 30, toRow: 40, change: -4 },
  ];

  test.each([
    [5, 5],
    [10, 10],
    // 10 + 3 * 15 / 10 = 14.5, halves upward.
    [13, 15],
    [19, 24],
    [20, 25],
    [30, 35],
    // 35 + 5 * 6 / 10.
    [35, 38],
    [40, 41],
    [50, 51],
  ])("row %s comes to row %s", (row, moved) => {
    expect(stretched(row, stretches)).toBe(moved);
  });
});
