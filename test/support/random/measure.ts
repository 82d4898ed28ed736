import type { Cloth } from "../referee/cloth.ts";
import type { Dice } from "./dice.ts";

/** A length in millimetres as a file says it. */
export function asLength(mm: number, dice: Dice): string {
  return dice.chance(50) ? `${mm} mm` : `${mm / 10} cm`;
}

/**
 * The whole millimetres nearest to so many units (rows, or needles), away from lengths that lie just between
 * two counts: there the last digit of a division would decide, which is nobody's fault.
 */
function millimetresOf(units: number, unitMm: number): number {
  let mm = Math.round(units * unitMm);
  while (Math.abs(((mm / unitMm) % 1) - 0.5) < 1e-6) mm++;
  return mm;
}

export const heightOf = (rows: number, cloth: Cloth, dice: Dice): string =>
  asLength(millimetresOf(rows, cloth.rowMm), dice);

/** A full width: `half` needles on each side. */
export const widthOf = (half: number, cloth: Cloth, dice: Dice): string =>
  asLength(millimetresOf(half, 2 * cloth.stitchMm), dice);

/** One side's distance from the centre line. */
export const distanceOf = (needles: number, cloth: Cloth, dice: Dice): string =>
  asLength(millimetresOf(needles, cloth.stitchMm), dice);
