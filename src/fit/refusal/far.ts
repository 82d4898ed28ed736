import { type Allowed, only } from "../../garment/allowed.ts";
import type { Placement } from "../../garment/garment.ts";
import * as limits from "../../garment/read/limits.ts";
import type { Motif, Quantity } from "../../motif/motif.ts";

/**
 * How far a rule is lifted, and how far it is looked for the least change of it. Further than this it is another
 * garment, and no change of this one; and to look through all of it stays quick.
 */
export const farRows = 24;
export const farNeedles = 40;
export const farRepeats = 40;
export const farColumns = 4;
export const farGap = 10;
export const farEase = { from: limits.ease.least, to: limits.ease.most };

/** The more quantities a motif has, the more looks there are within one and the same distance. */
export function farQuantity({ quantities }: Motif): number {
  if (quantities.length <= 2) return 12;
  return quantities.length === 3 ? 6 : 3;
}

/** The least that a quantity may be turned into: one that is always a length of something stays so. */
export function leastQuantity({ allowed }: Quantity): number {
  const least = allowed.kind === "list" ? (allowed.values[0] ?? 0) : allowed.least;
  if (least > 0) return 1;
  return least < 0 ? limits.signedCountOf.least : 0;
}

/** What is allowed, and every whole number not further than so much from some of it. */
export function near(allowed: Allowed, distance: number, least: number): Allowed {
  if (allowed.kind === "from") return { kind: "from", least: Math.max(least, allowed.least - distance) };
  return only(
    ...allowed.values.flatMap((value) =>
      Array.from({ length: 2 * distance + 1 }, (_, index) => value - distance + index).filter(
        (one) => one >= least || one === value,
      ),
    ),
  );
}

/**
 * A panel in the centre has most room with one column and nothing beside it; one that keeps to ranges at its sides
 * may have to be wider as well as narrower.
 */
export const isNarrowestBest = ({ margins }: Placement): boolean => margins.sides.kind === "centred";
