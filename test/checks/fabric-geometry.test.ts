import { describe, expect, test } from "vitest";
import { groundStitch, halfNeedles } from "../../src/cloth/gauge.ts";
import { gramsOf, metresOf } from "../../src/yarn/count.ts";
import { loopLengthCm, relaxedStates } from "../../src/yarn/fabric-geometry.ts";

type State = (typeof relaxedStates)[keyof typeof relaxedStates];

const rowsPerCm = (loopCm: number, { kc }: State): number => kc / loopCm;
const stitchesPerCm = (loopCm: number, { kw }: State): number => kw / loopCm;
const density = (loopCm: number, state: State): number =>
  rowsPerCm(loopCm, state) * stitchesPerCm(loopCm, state);

describe("loop geometry of plain knitted cloth", () => {
  // National entrance examination in textiles, 2015, question 54: Kw 4.2, Kc 5.5, l = 0.5 cm gives 92 /cm^2.
  test("Kc 5.5, Kw 4.2 and a loop of 0.5 cm give 92.4 stitches per cm^2", () => {
    expect(density(0.5, relaxedStates.full)).toBeCloseTo(92.4, 1);
  });

  // Derived from the same constants.
  test("a fully relaxed loop of 0.25 cm gives 22 courses and 16.8 wales per cm", () => {
    expect(rowsPerCm(0.25, relaxedStates.full)).toBeCloseTo(22, 2);
    expect(stitchesPerCm(0.25, relaxedStates.full)).toBeCloseTo(16.8, 2);
  });

  // From memory: D. L. Munden, J. Text. Inst. 50 (1959), dry relaxed; to 3 %.
  test("a dry relaxed loop of 0.5 cm gives 10 courses, 7.6 wales, 76 per cm^2", () => {
    expect(rowsPerCm(0.5, relaxedStates.dry)).toBeCloseTo(10, 2);
    expect(stitchesPerCm(0.5, relaxedStates.dry)).toBeCloseTo(7.6, 2);
    expect(density(0.5, relaxedStates.dry)).toBeCloseTo(76, 2);
  });

  // From memory, the same paper, wet relaxed: the printed Ks is within 1 % of Kc x Kw.
  test("the wet relaxed constants agree within 1 %", () => {
    const { kc, kw, ks } = relaxedStates.wet;
    expect(Math.abs((kc * kw) / ks - 1)).toBeLessThan(0.01);
  });

  // Derived: sqrt(23.1 / 11.2) cm for 28 stitches and 40 rows over 10 cm.
  test("a swatch of 28 x 40 over 10 cm has a loop of 1.436 cm", () => {
    expect(loopLengthCm((28 * 40) / 100)).toBeCloseTo(1.436, 3);
  });
});

describe("gauge", () => {
  // "Calculating gauge from a swatch", machine-knitting blog, Aug 2022: 100 stitches = 32.5 cm, 100 rows = 15 cm.
  test("100 stitches over 32.5 cm are 30.77 over 10 cm, 100 rows over 15 cm 66.67", () => {
    const across = groundStitch({ ground: { stitches: 100, rows: 1, overMm: 325 } });
    const up = groundStitch({ ground: { stitches: 1, rows: 100, overMm: 150 } });
    expect(100 / across.widthMm).toBeCloseTo(30.77, 2);
    expect(100 / up.heightMm).toBeCloseTo(66.67, 2);
  });

  // Online knitting book, chapter 3, Tension: 22 stitches over 10 cm, 40 cm wide, are 88 stitches.
  test("40 cm at 22 stitches over 10 cm are 88 needles", () => {
    expect(2 * halfNeedles(400, groundStitch({ ground: { stitches: 22, rows: 30, overMm: 100 } }))).toBe(88);
  });
});

describe("yarn counts", () => {
  // Derived from the definition of tex, grams of 1000 m (ISO 1144).
  test("50 g of 400 tex are 125 m", () => {
    expect(metresOf(50, 400)).toBeCloseTo(125, 9);
    expect(gramsOf(125, 400)).toBeCloseTo(50, 9);
  });
});
