import type { Weights } from "./garment.ts";

/** Terms of the cost that every garment has; a motif's quantities are terms as well, by their names. */
export const TERMS = ["length", "balance", "ease", "repeats", "columns", "gap", "waste"] as const;

/**
 * What one unit of a term costs where the garment does not say: a row of length, a row of imbalance, a percentage
 * point of ease, a row of interval, a needle of spread, a percent of what is on hand that is left over. Judgement: a
 * knitter would sooner change the look a little than the garment's length, and sees an uneven margin least.
 */
export const DEFAULT_WEIGHTS: Weights = {
  length: 3,
  balance: 0.5,
  ease: 1,
  interval: 1.5,
  spread: 1.2,
  waste: 0.1,
};

/** What a term weighs that has no default of its own. */
export const OTHER_WEIGHT = 1;

/** Cost of one unit of `term`: as the garment says, else by default. */
export function weightOf(weights: Weights, term: string): number {
  for (const table of [weights, DEFAULT_WEIGHTS]) {
    const weight = Object.hasOwn(table, term) ? table[term] : undefined;
    if (weight !== undefined) return weight;
  }
  return OTHER_WEIGHT;
}
