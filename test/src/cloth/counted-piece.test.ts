import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { countPiece, needlesAt, rowOf } from "../../../src/cloth/counted-piece.ts";
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
        for (const side of ["left", "right"] as const)
          for (let row = 1; row <= counted.rows; row++) {
            const change = Math.abs(counted[side][row]! - counted[side][row - 1]!);
            if (change > 1) expect((row % 2 === 0) === (carriage === side)).toBe(true);
          }
      }),
      { seed: 7, numRuns: 200 },
    );
  });
});
