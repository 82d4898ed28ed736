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

export const coursesPerCm = (loopCm: number, state: RelaxedState): number => state.kc / loopCm;

export const walesPerCm = (loopCm: number, state: RelaxedState): number => state.kw / loopCm;

/**
 * Loop length in cm from a swatch's density in stitches per cm^2: `l = sqrt(Ks / S)`. A swatch that is washed and
 * rested is taken for fully relaxed.
 */
export const loopLengthCm = (stitchesPerCm2: number, state: RelaxedState = relaxedStates.full): number =>
  Math.sqrt(state.ks / stitchesPerCm2);
