import { position } from "../../cloth/bed.ts";
import type { Stitch } from "../../cloth/gauge.ts";

/** A place on the cloth: mm from the middle of the cast-on edge, x to the right as the knitter sees it, y upward. */
export interface ClothPoint {
  readonly xMm: number;
  readonly yMm: number;
}

/** Needles, boundaries and rows to millimetres. */
export interface Placer {
  /** Middle of a needle at a row's line. */
  readonly needle: (needle: number, row: number) => ClothPoint;
  /** Place between two needles (0 = between L1 and R1) at a row's line. */
  readonly boundary: (boundary: number, row: number) => ClothPoint;
}

export const createPlacer = ({ widthMm, heightMm }: Stitch): Placer => ({
  needle: (needle, row) => ({ xMm: position(needle) * widthMm, yMm: row * heightMm }),
  boundary: (boundary, row) => ({ xMm: boundary * widthMm, yMm: row * heightMm }),
});

/** The boundary at a needle's left side. */
export const boundaryBefore = (needle: number): number => (needle > 0 ? needle - 1 : needle);
