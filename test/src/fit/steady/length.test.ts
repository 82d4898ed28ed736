import { describe, expect, test } from "vitest";
import type { GaugeRange } from "../../../../src/cloth/gauge-range.ts";
import { keepsLength, keepsPlainLengths, steadyChanges } from "../../../../src/fit/steady/length.ts";
import type { Garment } from "../../../../src/garment/garment.ts";
import { garmentText } from "../../../support/garment-text.ts";
import { soundGarment } from "../../../support/run-garment.ts";

/**
 * Two strips with a motif, the one of them of three stations, and two plain ones, 50 rows over 10 cm that may be off by 2 %, so a row is 2 mm as told, 10/5.1 =
 * 1.9608 mm at least and 10/4.9 = 2.0408 mm at most.
 */
const strips = (worked: string, plain = "", steady = "steady: true"): Garment =>
  soundGarment(
    garmentText({
      bed: `bed: { needles: 150 }\n${steady}`,
      gauge: `gauge:
  ground: { stitches: 20, rows: 50, over: 10 cm, within: 2 % }
  cord: { needles: 3, stitches: 19, over: 10 cm }`,
      pieces: `pieces:
  worked: { outline: [{ height: 0 cm, width: 20 cm }, { height: 15 cm, width: 22 cm }, { height: 20 cm, width: 20 cm }]${worked} }
  beside: { outline: [{ height: 0 cm, width: 20 cm }, { height: 8 cm, width: 20 cm }] }
  loose: { outline: [{ height: 0 cm, width: 20 cm }, { height: 8 cm, width: 20 cm }] }
  plain: { outline: [{ height: 0 cm, width: 20 cm }, { height: 10.04 cm, width: 20 cm }]${plain} }`,
      place: `place:
  - { motif: plait, on: worked, from: cast-on, to: bind-off }
  - { motif: plait, on: beside, from: cast-on, to: bind-off }`,
    }),
  );

const pieceNamed = ({ pieces }: Garment, name: string) => pieces.find((piece) => piece.name === name)!;

describe("rows by which a piece may change and stay as long as it has to be, whatever its rows measure", () => {
  test("are bounded by the lowest rows below and by the highest above", () => {
    const garment = strips(", grow: 2 cm, shrink: 1 cm");
    // 190 mm at 1.9608 mm are 96.9 rows at least, 220 mm at 2.0408 mm 107.8 at most; 200 mm are 100 rows as planned.
    expect(steadyChanges(garment, pieceNamed(garment, "worked"))).toEqual({ least: -3, most: 7 });
  });

  test("leave no change where even the rows as planned are too few or too many", () => {
    const garment = strips(", grow: 0 cm, shrink: 0 cm");
    // 200 mm are 102 rows of the lowest and 98 of the highest.
    expect(steadyChanges(garment, pieceNamed(garment, "worked"))).toEqual({ least: 2, most: -2 });
  });

  test("are not asked for where the file says nothing of the piece's length, or of staying steady", () => {
    const silent = strips("");
    expect(steadyChanges(silent, pieceNamed(silent, "worked"))).toBeUndefined();
    const loose = strips(", grow: 2 cm", "", "");
    expect(steadyChanges(loose, pieceNamed(loose, "worked"))).toBeUndefined();
  });
});

describe("pieces without a motif", () => {
  // 100.4 mm are 50 rows as planned, which come out between 98.04 mm and 102.04 mm.
  test.each([
    ["keep their length within what they may grow and shrink by", ", grow: 2 mm, shrink: 3 mm", true],
    ["come out too long", ", grow: 1 mm, shrink: 3 mm", false],
    ["come out too short", ", grow: 2 mm, shrink: 2 mm", false],
    ["may be any length where the file says nothing of it", "", true],
  ])("%s", (_, limits, keeps) => {
    expect(keepsPlainLengths(strips("", limits))).toBe(keeps);
  });

  test("are the only ones whose rows nothing can change", () => {
    expect(keepsPlainLengths(strips(", grow: 0 cm, shrink: 0 cm"))).toBe(true);
  });

  test("keep the end of what is allowed", () => {
    // 50 rows exactly at the least and at the most: 100.4 - 2.3608 = 50 x 1.96078, 100.4 + 1.6408 = 50 x 2.04082.
    expect(keepsPlainLengths(strips("", ", grow: 1.6409 mm, shrink: 2.3608 mm"))).toBe(true);
  });
});

describe("so many rows of a piece 100 mm long, which may be 10 mm shorter and 20 mm longer", () => {
  const range = {
    stitchWidthMm: { least: 4, most: 5 },
    rowHeightMm: { least: 2, most: 2.5 },
  } satisfies GaugeRange;
  const garment = strips("", "");
  const piece = {
    ...pieceNamed(garment, "worked"),
    outline: [
      { heightMm: 0, widthMm: 200 },
      { heightMm: 100, widthMm: 200 },
    ],
    growMm: 20,
    shrinkMm: 10,
    limitsLength: true,
  };

  // 45 rows of 2 mm are 90 mm, 48 of 2.5 mm are 120 mm.
  test.each([
    [44, false],
    [45, true],
    [48, true],
    [49, false],
  ])("%d keep its length over a range of gauges: %s", (rows, keeps) => {
    expect(keepsLength(piece, rows, range)).toBe(keeps);
  });

  test("keep no limit that the file does not state", () => {
    expect(keepsLength({ ...piece, limitsLength: false }, 49, range)).toBe(true);
    expect(keepsLength({ ...piece, limitsLength: false }, 1, range)).toBe(true);
  });
});
