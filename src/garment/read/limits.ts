import type { Limits } from "./numbers.ts";

/** Sizes beyond these are slips of the pen; each limit is well outside of what is knitted on a domestic bed. */

/** From a doll's bed to twice the finest bed made for the home (250 needles). */
export const bedNeedles: Limits = { least: 2, most: 600 };
/** The finest bed has 3.6 mm, the coarsest 9 mm. */
export const pitchMm: Limits = { least: 1, most: 30 };
/** Counts of a swatch: half stitches and rows are counted too. */
export const swatchCount: Limits = { least: 0.5, most: 2000 };
/** What a swatch was counted over. */
export const swatchMm: Limits = { least: 1, most: 2000 };
/** A stitch or a row from 0.5 mm (lace yarn on the finest bed has 2 mm) to 10 cm: 200 to 1 over 10 cm. */
export const oneStitchMm: Limits = { least: 0.5, most: 100 };
/** Heights and widths of a piece: 10 m is longer than any blanket. */
export const pieceMm: Limits = { least: 0, most: 10_000 };
/** Where an edge or a centre line may lie: below 0 on the other side of what it is measured from. */
export const signedPieceMm: Limits = { least: -10_000, most: 10_000 };
/** Degrees by which a drawing is turned. */
export const turn: Limits = { least: 0, most: 270 };
/** A piece keeps some width at every height: less than a millimetre is less than a stitch of the finest cloth. */
export const pieceWidthMm: Limits = { least: 1, most: 10_000 };
/** What a shape adds to the body's measurements, or takes from them: a metre is more than any garment has. */
export const easeMm: Limits = { least: -1000, most: 1000 };
/** How far a gauge may be off. */
export const gaugeWithin: Limits = { least: 0, most: 0.3 };
/** Share of what is not known of the gauge over which a fit has to hold. */
export const steadyShare: Limits = { least: 0, most: 1 };
/** Needles that a cord can be knitted on. */
export const cordNeedles: Limits = { least: 1, most: 12 };
/** Usual for a cord: 3 to 5, and 2 and 6 by hand. */
export const usualCordNeedles: Limits = { least: 2, most: 6 };
export const cordThicknessMm: Limits = { least: 0, most: 100 };
/** From sewing thread to the thickest roving. */
export const tex: Limits = { least: 1, most: 50_000 };
/** A swatch of a few stitches to a whole blanket. */
export const swatchGrams: Limits = { least: 0.1, most: 10_000 };
export const ageYears: Limits = { least: 0, most: 130 };
/** From a small newborn to taller than anyone. */
export const wearerMm: Limits = { least: 250, most: 2800 };
/** Cord stitches between two marker threads. */
export const markerEvery: Limits = { least: 2, most: 1000 };
export const weight: Limits = { least: 0, most: 1_000_000 };
/** Half too short and twice too long are no cord laid on cloth any more. */
export const ease: Limits = { least: -0.5, most: 2 };
export const reserve: Limits = { least: 0, most: 5 };
export const drawIn: Limits = { least: 0, most: 0.8 };
/** Rows and needles of margins, gaps and motifs. */
export const countOf: Limits = { least: 0, most: 10_000 };
export const signedCountOf: Limits = { least: -10_000, most: 10_000 };
export const fromOne: Limits = { least: 1, most: 10_000 };
/** Punched and drawn cards for the home have 12 to 60 stitches; a pattern kept by a computer may have the whole bed. */
export const cardStitches: Limits = { least: 1, most: 600 };
export const colours: Limits = { least: 1, most: 20 };
/** Sizes of one file: three times as many as the widest ranges that are printed. */
export const sizes: Limits = { least: 1, most: 60 };
/** How many of one piece are knitted: a blanket of squares at the most. */
export const make: Limits = { least: 1, most: 1000 };
/** Cord and yarn on hand: from a hand's breadth to far more than a garment takes. */
export const onHandMm: Limits = { least: 100, most: 100_000_000 };
export const onHandGrams: Limits = { least: 0.1, most: 1_000_000 };
export const balls: Limits = { least: 0.1, most: 10_000 };
