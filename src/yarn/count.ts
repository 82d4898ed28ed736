/**
 * Yarn counts. Tex is grams per 1000 m (ISO 1144); Nm is metres per gram, Ne the cotton count (a textile school's
 * conversion table: 590.5 / tex), denier is grams per 9000 m.
 */
export const texFromNm = (nm: number): number => 1000 / nm;

export const nmFromTex = (tex: number): number => 1000 / tex;

export const neFromTex = (tex: number): number => 590.5 / tex;

export const denierFromTex = (tex: number): number => 9 * tex;

export const texFromBall = (grams: number, metres: number): number => (1000 * grams) / metres;

/** Grams of so many metres. */
export const gramsOf = (metres: number, tex: number): number => (metres * tex) / 1000;

/** Metres of so many grams. */
export const metresOf = (grams: number, tex: number): number => (1000 * grams) / tex;
