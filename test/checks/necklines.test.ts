import { describe, expect, test } from "vitest";
import { countPiece } from "../../src/cloth/counted-piece.ts";
import { groundStitch } from "../../src/cloth/gauge.ts";
import { countNeckline } from "../../src/shape/neck.ts";
import { NECKS } from "../../src/shape/necks/index.ts";
import { garmentOf } from "../support/run-garment.ts";

const neck = (style: string, stitches: number, stitchMm = 4) =>
  countNeckline(NECKS.get(style)!, stitches, stitchMm);
const takes = (style: string, stitches: number): readonly number[] =>
  neck(style, stitches).steps.map(({ take }) => take);
const evenWidths = Array.from({ length: 60 }, (_, index) => 2 * (index + 1));

describe("published necklines", () => {
  // A knitting handbook: of 32 stitches cast off 12 at the centre, then at each side, every other row, 3 once, 2 twice
  // and 1 three times.
  test("a front neck of 32 stitches is 12, then 3, 2, 2, 1, 1, 1 at each side", () => {
    expect(neck("crew", 32).centre).toBe(12);
    expect(takes("crew", 32)).toEqual([3, 2, 2, 1, 1, 1]);
    expect(neck("crew", 32).steps.map(({ row }) => row)).toEqual([2, 4, 6, 8, 10, 12]);
  });

  // The same handbook: 20 at the centre, then 4 and 2 at each side; the last number is blurred, and 2 makes up the 32.
  test("a back neck of 32 stitches is 20, then 4 and 2 at each side", () => {
    expect(neck("back", 32).centre).toBe(20);
    expect(takes("back", 32)).toEqual([4, 2]);
  });

  // "The ins & outs of necklines", 2014: 40 to 55 % of a round neck's stitches at the centre.
  test("of a crew neck of 40 stitches 16 to 22 are at the centre", () => {
    expect(neck("crew", 40).centre).toBeGreaterThanOrEqual(16);
    expect(neck("crew", 40).centre).toBeLessThanOrEqual(22);
  });

  // The same page: half of what remains every other row, the rest every 4th.
  test("a scoop neck takes off half of what remains every 2nd row and the rest every 4th", () => {
    const { centre, steps } = neck("scoop", 50);
    expect(centre / 50).toBeGreaterThanOrEqual(0.4);
    expect(centre / 50).toBeLessThanOrEqual(0.55);
    const gaps = steps.map(({ row }, index) => row - (steps[index - 1]?.row ?? 0));
    expect(gaps).toEqual([...Array(8).fill(2), ...Array(7).fill(4)]);
    expect(steps.every(({ take }) => take === 1)).toBe(true);
  });

  // The same page: a V takes all evenly, a square neck all at once, a boat neck all at once but about 1 in.
  test("a V takes nothing at the centre, a square neck all, a boat neck all but about an inch", () => {
    expect(neck("V", 50)).toEqual({ stitches: 50, centre: 0, steps: [], evenFrom: 0 });
    expect(neck("square", 50)).toEqual({ stitches: 50, centre: 50, steps: [] });
    for (const stitchMm of [2.5, 3.57, 4.5, 6])
      expect(Math.abs((80 - neck("boat", 80, stitchMm).centre) * stitchMm - 25.4)).toBeLessThanOrEqual(
        stitchMm,
      );
  });

  test.each([...NECKS.keys()])("a %s neck of any even width takes off each stitch once", (style) => {
    for (const stitches of evenWidths) {
      const { centre, steps, evenFrom } = neck(style, stitches);
      const taken = steps.reduce((sum, { take }) => sum + 2 * take, centre);
      if (evenFrom === undefined) expect(taken, `${stitches}`).toBe(stitches);
      else expect(taken).toBeLessThanOrEqual(stitches);
      expect(centre % 2).toBe(0);
    }
  });
});

describe("a neckline on a piece", () => {
  const garmentWith = (like: string, style: string, width: string) =>
    garmentOf({
      format: "evenrow/1",
      bed: { needles: 200 },
      gauge: {
        ground: { stitches: 20, rows: 28, over: "10 cm" },
        cord: { needles: 3, stitches: 20, over: "10 cm" },
      },
      pieces: {
        body: {
          shape: {
            ...{ like, neck: style, width: "50 cm", length: "60 cm", "armhole depth": "20 cm" },
            ...{ "neck width": width, rib: "5 cm" },
          },
        },
      },
      place: [{ motif: "crossed cord", on: "body", from: "rib top" }],
    });

  /** Stitches taken off at one half's neck edge, with those at the centre first. */
  function counted(like: string, style: string): readonly (readonly number[])[] {
    const garment = garmentWith(like, style, "16 cm");
    const { neck: found } = countPiece(garment.pieces[0]!, groundStitch(garment.gauge));
    return (["left", "right"] as const).map((half) =>
      found![half]
        .map((needles, index, all) => (index === 0 ? 2 * needles : needles - all[index - 1]!))
        .filter((taken) => taken > 0),
    );
  }

  // 16 cm at 20 stitches over 10 cm are 32 stitches.
  test("counts as the rule says, in both halves", () => {
    for (const half of counted("body front", "crew")) expect(half).toEqual([12, 3, 2, 2, 1, 1, 1]);
    for (const half of counted("body back", "back")) expect(half).toEqual([20, 4, 2]);
  });

  test("is spread evenly over the whole depth where it is a V", () => {
    const garment = garmentWith("body front", "V", "16 cm");
    const { neck: found, rows } = countPiece(garment.pieces[0]!, groundStitch(garment.gauge));
    expect(found!.left[0]).toBe(0);
    // 20 cm at 28 rows over 10 cm are 56 rows, 16 steps: every 3rd row 8 times and every 4th 8 times.
    expect(rows - found!.row).toBe(56);
    const steps = found!.left.flatMap((needles, row, all) =>
      row > 0 && needles > all[row - 1]! ? [row] : [],
    );
    const gaps = steps.slice(1).map((row, index) => row - steps[index]!);
    expect(steps).toHaveLength(16);
    expect(new Set(gaps)).toEqual(new Set([3, 4]));
  });
});
