import { beforeAll, describe, expect, test } from "vitest";
import type { CountedPiece } from "../../../../src/cloth/counted-piece.ts";
import { checkPiece, checkSteps } from "../../../../src/fit/check/check-piece.ts";
import type { Garment } from "../../../../src/garment/garment.ts";
import { fitOf, placed, straight, swing, withNeedles, written } from "./support/laid-by-hand.ts";

/** The panel's 180 mm are 60 rows of 3 mm. */
const inLength = (growMm: number, shrinkMm: number, place: readonly object[] = [{}]): Garment => {
  const garment = written({ swing }, place, {
    pieces: {
      panel: {
        outline: [
          { height: "0 mm", width: "80 mm" },
          { height: "180 mm", width: "80 mm" },
        ],
        marks: { bottom: "0 mm", middle: "90 mm", above: "91 mm" },
      },
    },
  });
  return { ...garment, pieces: garment.pieces.map((piece) => ({ ...piece, growMm, shrinkMm })) };
};

/** A panel of so many rows, and what its placements ask for. */
const lengthsFound = (garment: Garment, rows: number, changes: readonly number[]): readonly string[] =>
  checkPiece(
    garment,
    fitOf(
      garment,
      changes.map((change, index) => placed([], { index, change })),
      [straight(rows, 10)],
    ),
    garment.pieces[0]!,
  ).map(({ rule, found }) => `${rule}: ${found}`);

describe("the independent check of a piece's length", () => {
  test("lets it grow and shrink by what it may", () => {
    expect(lengthsFound(inLength(0, 0), 60, [0])).toEqual([]);
    expect(lengthsFound(inLength(6, 0), 62, [2])).toEqual([]);
    expect(lengthsFound(inLength(0, 6), 58, [-2])).toEqual([]);
  });

  test("lets a hundredth of a millimetre pass and no more", () => {
    expect(lengthsFound(inLength(5.99, 0), 62, [2])).toEqual([]);
    expect(lengthsFound(inLength(0, 5.99), 58, [-2])).toEqual([]);
    const more = ["panel: its length changes by 2 rows, more than it may"];
    expect(lengthsFound(inLength(5.98, 90), 62, [2])).toEqual(more);
    const less = ["panel: its length changes by -2 rows, more than it may"];
    expect(lengthsFound(inLength(90, 5.98), 58, [-2])).toEqual(less);
  });

  test("finds a change that is not the one its placement asks for", () => {
    const found = (sum: number, rows: number) => [
      `panel: ${sum} rows are asked for, and its length changes by ${rows}`,
    ];
    expect(lengthsFound(inLength(9, 9), 62, [1])).toEqual(found(1, 2));
    expect(lengthsFound(inLength(9, 9), 60, [1])).toEqual(found(1, 0));
    expect(lengthsFound(inLength(9, 9), 61, [])).toEqual(found(0, 1));
  });

  test("adds what fields one above the other ask for", () => {
    const garment = inLength(9, 9, [{ to: "middle" }, { from: "middle" }]);
    expect(lengthsFound(garment, 61, [2, -1])).toEqual([]);
    expect(lengthsFound(garment, 62, [2, -1])).toEqual([
      "panel: 1 rows are asked for, and its length changes by 2",
    ]);
  });

  test("counts one field once, also where its marks have two names or round to one row", () => {
    // 90 mm and 91 mm are rows 30 and 30.3.
    const garment = inLength(9, 9, [{ to: "middle" }, { from: "bottom", to: "above" }]);
    expect(lengthsFound(garment, 62, [2, 2])).toEqual([]);
  });

  test("finds placements of one field that do not agree on its change", () => {
    const garment = inLength(9, 9, [{ to: "middle" }, { from: "bottom", to: "above" }]);
    expect(lengthsFound(garment, 62, [1, 2])).toEqual(["panel: bottom to above changes by 2 rows, and by 1"]);
  });

  test("leaves the placements of other pieces alone", () => {
    const garment = inLength(9, 9);
    const fit = fitOf(garment, [placed([], { piece: "back", change: 2 })], [straight(60, 10)]);
    expect(checkPiece(garment, fit, garment.pieces[0]!)).toEqual([]);
  });

  test("rounds half a row upward, however the division comes out", () => {
    // 35 cm of 17 rows in 10 cm are 59.5 rows, which the machine works out as 59.49999999999999.
    const garment = inLength(0, 0);
    const fine = {
      ...garment,
      gauge: { ...garment.gauge, ground: { stitches: 30, rows: 17, overMm: 100 } },
      pieces: garment.pieces.map((piece) => ({
        ...piece,
        outline: [piece.outline[0]!, { heightMm: 350, widthMm: 80 }],
      })),
    };
    expect(lengthsFound(fine, 60, [])).toEqual([]);
  });

  test("finds a piece that is missing", () => {
    const garment = inLength(0, 0);
    const fit = fitOf(garment, [], [straight(60, 10, { name: "sleeve" })]);
    expect(checkPiece(garment, fit, garment.pieces[0]!)).toEqual([{ rule: "panel", found: "is missing" }]);
  });
});

describe("the independent check of a piece's edges", () => {
  /** 60 needles, or 61 with the one more at the right. */
  let garment: Garment;

  beforeAll(() => {
    garment = inLength(0, 0);
  });

  const found = (
    piece: CountedPiece,
    side: "left" | "right",
    needles = garment.bed.needles,
  ): readonly string[] =>
    checkSteps({ ...garment, bed: { ...garment.bed, needles } }, piece, side).map((one) => one.found);

  test("finds rows that are wider than the bed", () => {
    expect(found(straight(8, 30), "left")).toEqual([]);
    expect(found(straight(8, 30), "right")).toEqual([]);
    expect(found(withNeedles(straight(8, 30), "left", { 0: 31, 8: 31 }), "left")).toEqual([
      "row 0: 31 needles on the left, the bed has 30",
      "row 8: 31 needles on the left, the bed has 30",
    ]);
    expect(found(withNeedles(straight(8, 30), "right", { 3: 31 }), "right")).toEqual([
      "row 3: 31 needles on the right, the bed has 30",
    ]);
  });

  test("knows the one needle more of an odd bed at the right", () => {
    expect(found(straight(0, 31), "right", 61)).toEqual([]);
    expect(found(straight(0, 31), "left", 61)).toEqual(["row 0: 31 needles on the left, the bed has 30"]);
  });

  test("lets one needle change at any row and on either side", () => {
    const piece = straight(4, 10, { left: [10, 11, 12, 11, 10], right: [10, 9, 8, 9, 10] });
    expect(found(piece, "left")).toEqual([]);
    expect(found(piece, "right")).toEqual([]);
  });

  test.each([
    // The carriage is where it began after an even number of rows.
    ["right", "right", 2],
    ["right", "left", 3],
    ["left", "left", 4],
    ["left", "right", 1],
  ] as const)(
    "with the carriage at the %s to begin with, lets several change on the %s at row %i",
    (carriage, side, row) => {
      const stepAt = (at: number) =>
        straight(6, 10, {
          carriage,
          [side]: Array.from({ length: 7 }, (_, index) => (index < at ? 10 : 8)),
        });
      expect(found(stepAt(row), side)).toEqual([]);
      expect(found(stepAt(row + 1), side)).toEqual([
        `row ${row + 1}: several needles change on the ${side}, away from the carriage`,
      ]);
    },
  );

  test("looks at both sides of a piece, and tells which piece it is", () => {
    const piece = straight(60, 30);
    const wide = withNeedles(withNeedles(piece, "left", { 5: 31 }), "right", { 7: 31 });
    expect(checkPiece(garment, fitOf(garment, [], [wide]), garment.pieces[0]!)).toEqual([
      { rule: "panel", found: "row 5: 31 needles on the left, the bed has 30" },
      { rule: "panel", found: "row 7: 31 needles on the right, the bed has 30" },
    ]);
  });
});
