import { describe, expect, test } from "vitest";
import { countPiece } from "../../../src/cloth/counted-piece.ts";
import { type BegunPiece, type Counting, canBeKnitted, recount } from "../../../src/refit/recount.ts";
import { soundGarment } from "../../support/run-garment.ts";

/** One needle is 5 mm and one row 4 mm wide and high, so that counts can be read off the outline. */
const stitch = { widthMm: 5, heightMm: 4 };
const planned: Counting = { stitch, stretches: [], extraNeedles: 0 };

const pieceOf = (outline: string, more = "") =>
  soundGarment(`
format: evenrow/1
bed: { needles: 200 }
gauge: { ground: { stitches: 20, rows: 25, over: 10 cm } }
pieces:
  panel: { outline: [${outline}]${more} }
motifs: { cable: { like: transferred cable } }
place: [{ motif: cable, on: panel, from: cast-on, to: bind-off }]
`).pieces[0]!;

const begun = (outline: string, row: number, more?: string): BegunPiece => {
  const piece = pieceOf(outline, more);
  return { piece, counted: countPiece(piece, stitch), counting: planned, row };
};

const taper =
  "{ height: 0 cm, width: 20 cm }, { height: 40 cm, width: 40 cm }, { height: 44 cm, width: 40 cm }";
const step =
  "{ height: 0 cm, width: 40 cm }, { height: 20 cm, width: 40 cm }, { height: 20 cm, width: 36 cm }, { height: 40 cm, width: 36 cm }";

describe("the rest of a piece", () => {
  test("is what it was where the gauge is", () => {
    const one = begun(taper, 37);
    expect(recount(one, planned)).toEqual(one.counted);
  });

  test("has fewer rows where they are taller, and an even taper from the needles in work", () => {
    const one = begun(taper, 50);
    const anew = recount(one, { ...planned, stitch: { widthMm: 5, heightMm: 5 } })!;
    // 44 cm of 5 mm are 88 rows; the widest, 40 needles a side, comes at row 80.
    expect([anew.rows, anew.marks.get("bind-off"), anew.left[80]]).toEqual([88, 88, 40]);
    expect(anew.left.slice(0, 51)).toEqual(one.counted.left.slice(0, 51));
    // 30 needles at row 50: ten more in thirty rows are one every third row.
    expect(
      anew.left
        .slice(50)
        .flatMap((needles, at) => (at > 0 && needles > anew.left[49 + at]! ? [50 + at] : [])),
    ).toEqual([52, 55, 58, 61, 64, 67, 70, 73, 76, 79]);
  });

  test("comes in where stitches are wider, one needle at a time", () => {
    const anew = recount(begun(taper, 50), { ...planned, stitch: { widthMm: 8, heightMm: 4 } })!;
    expect(anew.left[100]).toBe(25);
    for (let row = 51; row <= anew.rows; row++)
      expect(Math.abs(anew.left[row]! - anew.left[row - 1]!)).toBeLessThanOrEqual(1);
  });

  test("works a step that is overdue as soon as the carriage is there", () => {
    // At row 48 of 5 mm the piece is 24 cm tall, and its step belongs at 20 cm, row 50 of 4 mm.
    const anew = recount(begun(step, 48), { ...planned, stitch: { widthMm: 5, heightMm: 5 } })!;
    expect([anew.left[48], anew.left[49], anew.left[50]]).toEqual([40, 36, 36]);
    expect([anew.right[48], anew.right[49], anew.right[50]]).toEqual([40, 40, 36]);
  });

  test("is nothing where the piece is as tall as its outline", () => {
    expect(recount(begun(taper, 100), { ...planned, stitch: { widthMm: 5, heightMm: 4.5 } })).toBeUndefined();
  });

  test("keeps a neck that is opened, and opens one that is not above the present row", () => {
    const neck = ", neck: [{ height: 30 cm, width: 10 cm }, { height: 40 cm, width: 14 cm }]";
    const before = recount(begun(taper, 70, neck), { ...planned, stitch: { widthMm: 5, heightMm: 4.4 } })!;
    expect([before.neck!.row, before.marks.get("neck")]).toEqual([71, 71]);
    const one = begun(taper, 80, neck);
    const after = recount(one, { ...planned, stitch: { widthMm: 5, heightMm: 4.4 } })!;
    expect(after.neck!.row).toBe(75);
    expect(after.neck!.left.slice(0, 6)).toEqual(one.counted.neck!.left.slice(0, 6));
  });
});

test("a piece can be knitted only on needles that the bed has", () => {
  const { counted } = begun(taper, 10);
  expect(canBeKnitted(counted, { needles: 80, carriage: "right" })).toBe(true);
  expect(canBeKnitted(counted, { needles: 79, carriage: "right" })).toBe(false);
});
