import { describe, expect, test } from "vitest";
import { type Field, fieldsOf } from "../../../../src/fit/field.ts";
import type { Footing } from "../../../../src/fit/footing.ts";
import { createRoom } from "../../../../src/fit/refusal/room.ts";
import type { Garment } from "../../../../src/garment/garment.ts";
import type {
  GarmentFile,
  MarginsEntry,
  PieceEntry,
  PlacementEntry,
  SideName,
} from "../../../support/garment-file.ts";
import { cable, laid, plait, smallGarment, strip } from "../../../support/small-garment.ts";

const garmentWith = (
  piece: PieceEntry,
  margins: MarginsEntry = {},
  more: Partial<PlacementEntry> = {},
  motif: GarmentFile["motifs"][string] = plait(4, 3),
): Garment =>
  smallGarment({
    pieces: { sleeve: piece },
    motifs: { ornament: motif },
    place: [laid("ornament", "sleeve", margins, more)],
  });

const onlyField = (garment: Garment): Field => fieldsOf(garment)[0]!;

/** Stands 4 rows of lead-in and 8 of each repeat high, and 3 needles to each side of its middle wide. */
const footing = (more: Partial<Footing> = {}): Footing => ({
  leadRows: 4,
  repeatRows: 8,
  reach: { left: 3, right: 3 },
  crossedStitches: 0,
  ...more,
});

const mayBe = (garment: Garment, on = footing()): boolean =>
  createRoom(garment).mayBe(onlyField(garment), on);
const is = (garment: Garment, on = footing()): boolean =>
  createRoom(garment).is(onlyField(garment), on, garment.bed);

describe("room at a glance", () => {
  // 2 repeats of 8 rows above 4 of lead-in, between margins of at least 3 and 5: 28 rows.
  const margins = { bottom: "3..9", top: "5..9" };
  test.each<[number, string, boolean]>([
    [28, "0 mm", true],
    [27, "0 mm", false],
    [27, "4 mm", true],
    [26, "4 mm", false],
  ])("in %i rows that may grow by %s: %s", (rows, grow, expected) => {
    expect(mayBe(garmentWith(strip(20, rows, { grow }), margins, { repeats: { allow: [2, 3] } }))).toBe(
      expected,
    );
  });

  test("in the rows between its marks alone", () => {
    const marked = (low: number): Garment =>
      garmentWith(strip(20, 60, { marks: { low: `${4 * low} mm` } }), margins, { from: "low", repeats: 2 });
    expect([mayBe(marked(32)), mayBe(marked(33))]).toEqual([true, false]);
  });

  test("no motif is wider than the piece at its widest", () => {
    expect(mayBe(garmentWith(strip(6, 28)))).toBe(true);
    expect(mayBe(garmentWith(strip(4, 28)))).toBe(false);
    // 4 needles at one side where it is widest, 2 at the other.
    const tapered = (wide: SideName, narrow: SideName): PieceEntry => ({
      outline: [
        { height: "0 mm", ...sides(wide, "5 mm", narrow) },
        { height: "112 mm", ...sides(wide, "20 mm", narrow) },
      ],
    });
    const sides = (wide: SideName, width: string, narrow: SideName): { left: string; right: string } =>
      ({ [wide]: width, [narrow]: "10 mm" }) as { left: string; right: string };
    for (const piece of [tapered("left", "right"), tapered("right", "left")]) {
      expect(mayBe(garmentWith(piece))).toBe(true);
      expect(mayBe(garmentWith(piece), footing({ reach: { left: 4, right: 3 } }))).toBe(false);
    }
  });

  test("a cable that draws in has needles added, so that width is not judged", () => {
    const narrow = strip(4, 28);
    expect(mayBe(garmentWith(narrow, {}, {}, cable(8, { "draw-in": "20 %" })))).toBe(true);
    expect(mayBe(garmentWith(narrow, {}, {}, cable(8)))).toBe(false);
  });
});

describe("room as it is", () => {
  test("asks for every row", () => {
    expect([27, 28, 29].map((rows) => is(garmentWith(strip(20, rows))))).toEqual([false, true, false]);
    expect(is(garmentWith(strip(20, 27, { grow: "4 mm" })))).toBe(true);
    expect(is(garmentWith(strip(20, 29, { shrink: "4 mm" })))).toBe(true);
    expect(is(garmentWith(strip(20, 27), { bottom: "0..7" }))).toBe(true);
    expect(is(garmentWith(strip(20, 28), {}, { repeats: [2, 4] }))).toBe(false);
  });

  test("asks for every needle at each side", () => {
    expect([2, 3].map((least) => is(garmentWith(strip(10, 28), { side: { least } })))).toEqual([true, false]);
  });

  test("asks for needles on the bed, and for more of them where a cable draws in", () => {
    const onBed = (needles: number, motif = cable(8)): boolean => {
      const garment = garmentWith(strip(10, 28), {}, {}, motif);
      const field = onlyField(garment);
      return createRoom(garment).is(field, footing({ leadRows: 4, crossedStitches: 4 }), {
        ...garment.bed,
        needles,
      });
    };
    expect([10, 9].map((needles) => onBed(needles))).toEqual([true, false]);
    // 4 crossed stitches that lose 40 % are 1.6 stitches narrower: half of it, a whole needle, is added at each side.
    const drawing = cable(8, { "draw-in": "40 %" });
    expect([12, 11].map((needles) => onBed(needles, drawing))).toEqual([true, false]);
  });
});

describe("a question that was asked before", () => {
  /** A field that tells how often its rows are looked at. */
  function watched(field: Field): { field: Field; looks: () => number } {
    let looks = 0;
    return {
      field: {
        ...field,
        get toRow() {
          looks++;
          return field.toRow;
        },
      },
      looks: () => looks,
    };
  }

  const garment = garmentWith(strip(20, 28));

  test("is not worked out again", () => {
    const { is: isRoom } = createRoom(garment);
    const { field, looks } = watched(onlyField(garment));
    expect(isRoom(field, footing(), garment.bed)).toBe(true);
    expect(isRoom(field, footing({ leadRows: 5 }), garment.bed)).toBe(false);
    const before = looks();
    expect(before).toBeGreaterThan(0);
    expect(isRoom(field, footing(), garment.bed)).toBe(true);
    expect(isRoom(field, footing({ leadRows: 5 }), garment.bed)).toBe(false);
    expect(looks()).toBe(before);
  });

  test.each<[string, (field: Field) => Field]>([
    [
      "placement",
      (field) => ({
        ...field,
        placement: { ...field.placement, repeats: { allowed: { kind: "list", values: [3] } } },
      }),
    ],
    ["piece", (field) => ({ ...field, piece: { ...field.piece } })],
  ])("is another one for another %s", (_, change) => {
    const { is: isRoom } = createRoom(garment);
    isRoom(onlyField(garment), footing(), garment.bed);
    const { field, looks } = watched(change(onlyField(garment)));
    expect(isRoom(field, footing(), garment.bed)).toBe(true);
    expect(looks()).toBeGreaterThan(0);
  });

  test("is another one for another bed and another footing", () => {
    const { is: isRoom } = createRoom(garment);
    const field = onlyField(garment);
    const bed = (needles: number) => ({ ...garment.bed, needles });
    expect(isRoom(field, footing(), bed(19))).toBe(false);
    expect(isRoom(field, footing(), bed(20))).toBe(true);
    expect(isRoom(field, footing({ repeatRows: 12 }), bed(20))).toBe(true);
    expect(isRoom(field, footing({ repeatRows: 11 }), bed(20))).toBe(false);
    expect(isRoom(field, footing(), bed(19))).toBe(false);
  });
});
