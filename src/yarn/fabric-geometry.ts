import type { Range } from "./range.ts";

/**
 * Loop geometry of plain knitted cloth: `courses per cm = Kc / l`, `wales per cm = Kw / l` and stitch density
 * `S = Ks / l^2`, with l the loop length, the yarn in one stitch, in cm.
 * Sources: D. L. Munden, J. Text. Inst. 50 (1959) T448 (dry and wet states, from memory, to 3 %); Kc 5.5 and
 * Kw 4.2 of the fully relaxed state from a national entrance examination in textiles (2015, question 54).
 */
export interface RelaxedState {
  readonly kc: number;
  readonly kw: number;
  readonly ks: number;
}

/** `ks` as printed; in the wet state it is 0.6 % less than kc x kw. */
export const relaxedStates = {
  dry: { kc: 5, kw: 3.8, ks: 19 },
  wet: { kc: 5.3, kw: 4.1, ks: 21.6 },
  full: { kc: 5.5, kw: 4.2, ks: 23.1 },
} as const satisfies Record<string, RelaxedState>;

/** How far a constant from memory may be off. */
const memoryTolerance = 0.03;

/**
 * Ks of a swatch that was washed and rested. It is taken for fully relaxed, 23.1 +/- 1 (J. J. F. Knapton and others,
 * Text. Res. J. 38 (1968), from memory); one that has not quite come to rest is in the wet relaxed state at the least.
 */
export const restedKs: Range = {
  least: relaxedStates.wet.ks * (1 - memoryTolerance),
  about: relaxedStates.full.ks,
  most: relaxedStates.full.ks + 1,
};

/** Loop length in cm from a swatch's density in stitches per cm^2: `l = sqrt(Ks / S)`. */
export const loopLengthCm = (stitchesPerCm2: number, ks: number = relaxedStates.full.ks): number =>
  Math.sqrt(ks / stitchesPerCm2);
