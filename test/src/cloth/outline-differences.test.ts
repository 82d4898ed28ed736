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
