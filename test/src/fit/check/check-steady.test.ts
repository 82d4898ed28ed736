import { beforeAll, describe, expect, test } from "vitest";
import { checkSteady } from "../../../../src/fit/check/check-steady.ts";
import type { Fit, FittedPart } from "../../../../src/fit/fit.ts";
import type { FittedSegment } from "../../../../src/fit/looks.ts";
import type { CordGauge, Garment, GroundGauge } from "../../../../src/garment/garment.ts";
import type { EaseLimits } from "../../../../src/motif/motif.ts";
import {
  fitOf,
  lookWith,
  placed,
  section,
  straight,
  stretch,
  swing,
  written,
} from "./support/laid-by-hand.ts";

/** A swatch of 30 stitches, 40 rows and 24 cord stitches over 12 cm, each counted to a quarter. */
let garment: Garment;

beforeAll(() => {
  garment = { ...written({ cord: swing }), steady: 1 };
});

const gauged = (ground: Partial<GroundGauge>, cord: Partial<CordGauge> = {}, steady = 1): Garment => ({
  ...garment,
  steady,
  gauge: {
    ground: { ...garment.gauge.ground, ...ground },
    cord: { ...garment.gauge.cord!, ...cord },
  },
});

/** One repeat of a cord that is hung after 3 needles and 3 rows, with such limits of its ease. */
function laid(
  ease: EaseLimits,
  counted: readonly FittedSegment[] = [stretch(3, 3, 3)],
  part?: FittedPart,
): Fit {
  const motif = { ...garment.motifs[0]!, ease } as Garment["motifs"][number];
  const look = lookWith(motif, { interval: 3, spread: 2 }, counted);
  return fitOf(garment, [placed([section(look, 1)], part && { part })], [straight(60, 10)]);
}

const anyEase: EaseLimits = { from: -1, to: 99 };

const found = (of: Garment, fit: Fit): readonly string[] => [
  ...new Set(checkSteady(of, fit).map((one) => `${one.rule}: ${one.found}`)),
];

describe("the independent check of a steady fit's ease", () => {
  /** The straight line behind 3 needles and 3 rows where so many stitches, or rows, are in 12 cm. */
  const line = (stitches: number, rows: number): number => Math.hypot((3 * 120) / stitches, (3 * 120) / rows);
  /** Three cord stitches where so many are in 12 cm. */
  const cord = (stitches: number): number => (3 * 120) / stitches;

  /** That the ease is told as between these two, and kept within them to a billionth. */
  function isBetween(least: number, most: number, of: Garment, counted?: readonly FittedSegment[]): void {
    const words = `ease from ${(100 * least).toFixed(2)} % to ${(100 * most).toFixed(2)} % is outside its limits`;
    const rule = (row: number): string => `cord on panel, cord, row ${row}, steady`;
    expect(found(of, laid({ from: 5, to: 6 }, counted))).toEqual([
      `${rule(3)}: ${words}`,
      `${rule(6)}: ${words}`,
    ]);
    expect(found(of, laid({ from: least + 0.9e-9, to: most - 0.9e-9 }, counted))).toEqual([]);
    expect(found(of, laid({ from: least + 1.1e-9, to: most }, counted))).toHaveLength(2);
    expect(found(of, laid({ from: least, to: most - 1.1e-9 }, counted))).toHaveLength(2);
  }

  test("is least with the loosest cloth and the tightest cord, and most the other way round", () => {
    isBetween(cord(24.25) / line(29.75, 39.75) - 1, cord(23.75) / line(30.25, 40.25) - 1, garment);
  });

  test("is over the share of what is left open that is asked for", () => {
    const half = cord(24.125) / line(29.875, 39.875) - 1;
    isBetween(half, cord(23.875) / line(30.125, 40.125) - 1, gauged({}, {}, 0.5));
  });

  test("is over what the file says that each count is off by", () => {
    const of = gauged({ within: { stitches: 0.02, rows: 0.1 } }, { within: 0.05 });
    isBetween(cord(25.2) / line(29.4, 36) - 1, cord(22.8) / line(30.6, 44) - 1, of);
    isBetween(
      cord(24.25) / line(29.4, 39.75) - 1,
      cord(23.75) / line(30.6, 40.25) - 1,
      gauged({ within: { stitches: 0.02 } }),
    );
  });

  test("is over a quarter of a row in those that were counted, where that was over another length", () => {
    // A quarter row in 20 is half a row in 40.
    const of = gauged({ rowsCounted: { rows: 20, overMm: 60 } });
    isBetween(cord(24.25) / line(29.75, 39.5) - 1, cord(23.75) / line(30.25, 40.5) - 1, of);
  });

  test("is of a longer path where the cord climbs over another", () => {
    // Climbing once makes the line the side of a triangle twice as high as the cord is thick.
    const climbing = [stretch(3, 3, 3, { climbs: 1 })];
    const path = (stitches: number, rows: number): number => Math.hypot(line(stitches, rows), 2 * 5);
    isBetween(
      cord(24.25) / path(29.75, 39.75) - 1,
      cord(23.75) / path(30.25, 40.25) - 1,
      gauged({}, { thicknessMm: 5 }),
      climbing,
    );
    isBetween(cord(24.25) / line(29.75, 39.75) - 1, cord(23.75) / line(30.25, 40.25) - 1, garment, climbing);
  });

  test.each([
    // A path that climbs twice, 2 * sqrt(l^2 + 4 t^2) - l, is shortest at l = 2 t / sqrt(3), where it is 2 t * sqrt(3).
    ["nearer to its shorter end", 12.95],
    ["nearer to its longer end", 13.03],
  ])("is most between the corners where a path that climbs twice is shortest there, %s", (_, thicknessMm) => {
    const shortest = 2 * thicknessMm * Math.sqrt(3);
    const least = (2 * thicknessMm) / Math.sqrt(3);
    expect(least).toBeGreaterThan(line(30.25, 40.25));
    expect(least).toBeLessThan(line(29.75, 39.75));
    const path = (at: number): number => 2 * Math.hypot(at, 2 * thicknessMm) - at;
    const longest = Math.max(path(line(29.75, 39.75)), path(line(30.25, 40.25)));
    isBetween(cord(24.25) / longest - 1, cord(23.75) / shortest - 1, gauged({}, { thicknessMm }), [
      stretch(3, 3, 3, { climbs: 2 }),
    ]);
  });

  test("is no matter of a standing loop, of what has no count and of what is no cord", () => {
    const tight: EaseLimits = { from: 5, to: 6 };
    const whole = written({
      loops: { like: "standing loops" },
      band: { kind: "band", stitches: 4, repeat: 4 },
    });
    const [loops, band] = whole.motifs;
    const look = lookWith({ ...loops!, ease: tight } as typeof loops & object, { interval: 4, loop: 9 }, [
      stretch(0, 2, 9, { fixed: 9 }),
      stretch(1, 2, 2),
    ]);
    const laidLoops = fitOf(whole, [placed([section(look, 1)])], []);
    // Loops end at rows 2 and 6.
    expect(checkSteady(garment, laidLoops).map(({ rule }) => rule)).toEqual([
      "loops on panel, cord, row 4, steady",
      "loops on panel, cord, row 8, steady",
    ]);
    expect(found(garment, laid(tight, []))).toEqual([]);
    expect(found(garment, fitOf(whole, [placed([section(lookWith(band!, {}), 2)])], []))).toEqual([]);
    expect(found(garment, fitOf(whole, [placed([])], []))).toEqual([]);
    const { cord: _, ...gauge } = garment.gauge;
    expect(found({ ...garment, gauge }, laid(tight))).toEqual([]);
  });

  test("is looked at in every section and in what is worked of a further repeat, as far as it concerns", () => {
    const tight: EaseLimits = { from: 5, to: 6 };
    const [first] = laid(tight).placements;
    const { look } = first!.sections[0]!;
    const sections = [section(look, 1), section(look, 1)];
    const part = { lastRow: 0, rows: 0, columns: [] };
    const fit = fitOf(garment, [placed(sections, { part })], []);
    const rows = (...more: [((of: unknown, section: number) => boolean)?]) =>
      checkSteady(garment, fit, ...more).map(({ rule }) => /row (\d+)/.exec(rule)![1]);
    expect(rows()).toEqual(["3", "6", "9", "12", "15", "18"]);
    expect(rows((_, index) => index === 1)).toEqual(["9", "12", "15", "18"]);
    expect(rows(() => false)).toEqual([]);
  });
});

describe("the independent check of a steady fit's lengths and loops", () => {
  const withPiece = (piece: Partial<Garment["pieces"][number]>): Garment => ({
    ...garment,
    pieces: [
      {
        ...garment.pieces[0]!,
        outline: [0, 30, 180].map((heightMm) => ({ heightMm, widthMm: 80 })),
        ...piece,
      },
    ],
  });

  test("holds a length to its limits with the highest and the lowest row", () => {
    // 60 rows where 40.25 or 39.75 of them are in 12 cm: 180 mm are 178.88 or 181.13 mm.
    const off = (60 * 120) / 39.75 - 180;
    const long = `panel, steady: comes out 1.1 mm off where a row is 3.019 mm high`;
    const short = `panel, steady: comes out -1.1 mm off where a row is 2.981 mm high`;
    const limits = (growMm: number, shrinkMm: number, limitsLength?: boolean) =>
      found(withPiece({ growMm, shrinkMm, ...(limitsLength && { limitsLength }) }), laid(anyEase));
    expect(limits(1, 1, true)).toEqual([long, short]);
    expect(limits(9, 1, true)).toEqual([short]);
    expect(limits(1, 9, true)).toEqual([long]);
    expect(limits(0, 0)).toEqual([]);
    // A hundredth of a millimetre is nothing.
    expect(limits(off - 0.009, 9, true)).toEqual([]);
    expect(limits(off - 0.011, 9, true)).toEqual([long]);
    const lost = 180 - (60 * 120) / 40.25;
    expect(limits(9, lost - 0.009, true)).toEqual([]);
    expect(limits(9, lost - 0.011, true)).toEqual([short]);
  });

  test("holds each piece of the garment by its own rows, and none that the fit leaves out", () => {
    const limits = { growMm: 1, shrinkMm: 9, limitsLength: true };
    const [panel] = withPiece(limits).pieces;
    const outline = [0, 150].map((heightMm) => ({ heightMm, widthMm: 80 }));
    const two: Garment = { ...garment, pieces: [{ ...panel!, name: "other", outline }, panel!] };
    const fit = laid(anyEase);
    const long = "panel, steady: comes out 1.1 mm off where a row is 3.019 mm high";
    expect(found(two, fit)).toEqual([long]);
    // 50 rows of an outline of 150 mm are at most 0.94 mm too long, 52 rows up to 6.98 mm.
    const other = (rows: number): Fit => ({
      ...fit,
      pieces: [{ ...straight(rows, 10), name: "other" }, ...fit.pieces],
    });
    expect(found(two, other(50))).toEqual([long]);
    expect(found(two, other(52))[0]).toBe("other, steady: comes out 7.0 mm off where a row is 3.019 mm high");
  });

  test("holds a child's loops to their limit with every gauge that is possible", () => {
    // 15 mm of cloth and 60 mm of cord are just what is allowed; with 23.75 cord stitches in 12 cm it is more.
    const child: Garment = { ...garment, wearer: { ageYears: 5, path: [] } };
    const fit = laid(anyEase, [stretch(3, 3, 12)]);
    const rules = (of: Garment, steadyFit: Fit) => checkSteady(of, steadyFit).map(({ rule }) => rule);
    // Two loops, with either width of a stitch and either height of a row.
    expect(rules(child, fit)).toEqual(Array(2 * 4).fill("cord on panel, steady"));
    expect(rules(child, laid(anyEase, [stretch(3, 3, 11)]))).toEqual([]);
    expect(rules(garment, fit)).toEqual([]);
    const none = checkSteady(child, fit, (_, index) => index !== 0);
    expect(none).toEqual([]);
  });

  test("asks for nothing where the gauge is taken as it is told", () => {
    const { steady: _, ...told } = withPiece({ growMm: 0, shrinkMm: 0, limitsLength: true });
    expect(checkSteady(told, laid({ from: 5, to: 6 }))).toEqual([]);
  });
});
