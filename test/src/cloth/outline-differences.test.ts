import { describe, expect, test } from "vitest";
import { countPiece } from "../../../src/cloth/counted-piece.ts";
import { groundStitch } from "../../../src/cloth/gauge.ts";
import { type OutlineDifference, outlineDifferences } from "../../../src/cloth/outline-differences.ts";
import type { Piece } from "../../../src/garment/garment.ts";

/** Stitches of 5 mm by 4 mm, so that every number can be followed. */
const stitch = groundStitch({ ground: { stitches: 20, rows: 25, overMm: 100 } });

const piece = (outline: Piece["outline"], more: Partial<Piece> = {}): Piece => ({
  name: "piece",
  path: [],
  outline,
  marks: [],
  neck: [],
  growMm: 0,
  shrinkMm: 0,
  carriage: "right",
  ...more,
});

const of = (edge: OutlineDifference["edge"], differences: readonly OutlineDifference[]) =>
  differences.find((one) => one.edge === edge)!;

describe("how far a knitted edge lies from its outline", () => {
  test("nothing where the outline stands on needles and rows", () => {
    const straight = piece([
      { heightMm: 0, widthMm: 200 },
      { heightMm: 400, widthMm: 200 },
    ]);
    expect(outlineDifferences(straight, stitch).map(({ mm }) => mm)).toEqual([0, 0]);
  });

  test("up to half a stitch where the width is no whole number of needles", () => {
    const [left, right] = outlineDifferences(
      piece([
        { heightMm: 0, leftMm: 102, rightMm: 98 },
        { heightMm: 400, leftMm: 102, rightMm: 98 },
      ]),
      stitch,
    );
    expect(left).toMatchObject({ edge: "left", mm: -2, cause: "whole needles" });
    expect(right).toMatchObject({ edge: "right", mm: 2, cause: "whole needles" });
  });

  test("a step that waits a row for the carriage is within the height's own half row", () => {
    const stepped = piece([
      { heightMm: 0, widthMm: 200 },
      { heightMm: 100, widthMm: 200 },
      { heightMm: 100, widthMm: 150 },
      { heightMm: 400, widthMm: 150 },
    ]);
    expect(outlineDifferences(stepped, stitch).map(({ mm }) => mm)).toEqual([0, 0]);
  });

  test("a slope of several needles a row waits for the carriage, and the last row for nothing", () => {
    // 12 needles in 6 rows: two a row wanted, four every second row knitted.
    const shoulder = piece([
      { heightMm: 0, widthMm: 200 },
      { heightMm: 100, widthMm: 200 },
      { heightMm: 124, widthMm: 80 },
    ]);
    const differences = outlineDifferences(shoulder, stitch);
    const counted = countPiece(shoulder, stitch);
    expect(of("left", differences).mm).toBeGreaterThan(0);
    for (const edge of ["left", "right"] as const) {
      const { mm, row, cause } = of(edge, differences);
      const outlineHere = 100 - ((row * 4 - 100) * 60) / 24;
      // The outline is taken half a row further up, where it is nearest to the edge that stays behind.
      expect(mm).toBeCloseTo(counted[edge][row]! * 5 - (outlineHere + 5), 9);
      expect(["carriage", "last row"]).toContain(cause);
    }
  });

  test("even rows only are named where they are what keeps an edge back", () => {
    const tapered = (shapingOn: "any row" | "even rows") =>
      piece(
        [
          { heightMm: 0, widthMm: 200 },
          { heightMm: 40, widthMm: 280 },
          { heightMm: 80, widthMm: 280 },
        ],
        { shapingOn },
      );
    const free = outlineDifferences(tapered("any row"), stitch);
    const even = outlineDifferences(tapered("even rows"), stitch);
    expect(Math.abs(of("left", even).mm)).toBeGreaterThanOrEqual(Math.abs(of("left", free).mm));
    expect(even.map(({ cause }) => cause)).toContain("even rows");
  });

  test("a neck's two edges are told half by half", () => {
    const front = piece(
      [
        { heightMm: 0, widthMm: 300 },
        { heightMm: 200, widthMm: 300 },
      ],
      {
        neck: [
          { heightMm: 100, widthMm: 20 },
          { heightMm: 120, widthMm: 160 },
          { heightMm: 200, widthMm: 160 },
        ],
      },
    );
    const differences = outlineDifferences(front, stitch);
    expect(differences.map(({ edge }) => edge)).toEqual([
      "left",
      "right",
      "left half's neck",
      "right half's neck",
    ]);
    expect(of("left half's neck", differences)).toMatchObject({ cause: "carriage" });
    expect(of("left half's neck", differences).mm).toBeLessThan(0);
  });
});

describe("where an edge lies furthest from its outline, followed row by row", () => {
  // From the right, so that the carriage is at the left after each odd row. Half a row up or down is 2 mm.
  const differences = (
    outline: readonly (readonly [heightMm: number, widthMm: number])[],
    more: Partial<Piece> = {},
  ) =>
    outlineDifferences(
      piece(
        outline.map(([heightMm, widthMm]) => ({ heightMm, widthMm })),
        more,
      ),
      stitch,
    );

  test("on a slope of two needles a row, the first row on which four have to wait", () => {
    const [left, right] = differences([
      [0, 200],
      [100, 200],
      [124, 80],
    ]);
    // Needles from row 25 on: 20, 18, 16 ... are wanted; the left edge has 20, 20, 16, 16, the right one 20, 18, 18, 14.
    expect(left).toEqual({ edge: "left", mm: 100 - 95, row: 26, heightMm: 104, cause: "carriage" });
    expect(right).toEqual({ edge: "right", mm: 90 - 85, row: 27, heightMm: 108, cause: "carriage" });
  });

  test("on a slope of two needles a row the carriage keeps an edge back, whatever rows single ones may change on", () => {
    const [, right] = differences(
      [
        [0, 200],
        [100, 200],
        [124, 80],
      ],
      { shapingOn: "even rows" },
    );
    expect(right).toMatchObject({ row: 27, cause: "carriage" });
  });

  test("where needles wait until all is bound off", () => {
    const [left, right] = differences([
      [0, 200],
      [40, 210],
      [80, 200],
      [116, 200],
      [124, 80],
    ]);
    // Six needles a row from row 29 to 31: at row 30 the carriage is at the right, and row 31 is the last one.
    expect(left).toEqual({ edge: "left", mm: 100 - 85, row: 30, heightMm: 120, cause: "last row" });
    // One needle more in ten rows and then one less is never more than half a needle off, less what half a row is worth.
    expect(right!.mm).toBeCloseTo(2.5 - 0.25, 9);
  });

  test("up to a top that is no whole number of rows", () => {
    // 39.5 rows are 40; five needles a row from row 38 on, and at row 39 the carriage is at the left.
    const [left, right] = differences([
      [0, 200],
      [150, 200],
      [158, 100],
    ]);
    expect(left!.mm).toBe(0);
    expect(right).toEqual({ edge: "right", mm: 100 - 75, row: 39, heightMm: 156, cause: "last row" });
  });

  test("from the foot on", () => {
    const [left] = differences([
      [0, 204],
      [40, 204],
      [40, 190],
      [80, 190],
    ]);
    // 102 mm are 20.4 needles.
    expect(left).toEqual({ edge: "left", mm: 100 - 102, row: 0, heightMm: 0, cause: "whole needles" });
  });

  test("nowhere at a step half a row below a row, which waits for the carriage", () => {
    // 42 mm are 10.5 rows: the left edge steps at row 11, the right one at row 12.
    const steps = differences([
      [0, 200],
      [42, 200],
      [42, 160],
      [80, 160],
    ]);
    expect(steps.map(({ mm }) => mm)).toEqual([0, 0]);
  });

  test("where single needles wait for an even row, and two of them for the carriage", () => {
    const [left, right] = differences(
      [
        [0, 200],
        [40, 280],
        [80, 280],
        [200, 200],
      ],
      { shapingOn: "even rows" },
    );
    // 27 needles are wanted at row 9, and 26 stand there: 130 mm, where the outline is 136 mm from the centre.
    expect(right).toEqual({ edge: "right", mm: 130 - 134, row: 9, heightMm: 36, cause: "even rows" });
    // The left edge has two to add at row 10, where the carriage is at the right.
    expect(left).toEqual({ edge: "left", mm: 130 - 138, row: 10, heightMm: 40, cause: "carriage" });
  });

  test("at a neck, each half bound off from its other side", () => {
    const neck = [
      { heightMm: 100, widthMm: 20 },
      { heightMm: 120, widthMm: 160 },
      { heightMm: 200, widthMm: 160 },
    ];
    const [, , left, right] = differences(
      [
        [0, 300],
        [200, 300],
      ],
      { neck },
    );
    // 2, 5, 8, 10, 13 and 16 needles are wanted from row 25 on: the left half has 2, 5, 5, 10, 10, 16, the right one
    // 2, 2, 8, 8, 13, 13, 16; the outline is 66 mm from the centre at row 29 and 73 mm half a row below row 30.
    expect(left).toEqual({
      edge: "left half's neck",
      mm: 50 - 59,
      row: 29,
      heightMm: 116,
      cause: "carriage",
    });
    expect(right).toEqual({
      edge: "right half's neck",
      mm: 65 - 73,
      row: 30,
      heightMm: 120,
      cause: "carriage",
    });
  });

  test("nowhere where the outline has a tip within half a row", () => {
    // It goes out to 105 mm and back, 1 mm above row 10; that row has 21 needles and the next one 20 again.
    const [tip] = differences([
      [0, 200],
      [39, 200],
      [41, 210],
      [43, 200],
      [80, 200],
    ]);
    expect(tip).toEqual({ edge: "left", mm: 0, row: 0, heightMm: 0, cause: "whole needles" });
  });
});
