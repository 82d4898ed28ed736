/** Yarn by its count in tex, which is grams per 1000 m (ISO 1144). */

/** Grams of so many metres. */
export const gramsOf = (metres: number, tex: number): number => (metres * tex) / 1000;

/** Metres of so many grams. */
export const metresOf = (grams: number, tex: number): number => (1000 * grams) / tex;
