import type { Preference } from "../garment/allowed.ts";
import type { SupplyOf, Weights } from "../garment/garment.ts";
import { weightOf } from "../garment/weights.ts";

/** One thing a fit gives up against what was asked for. */
export interface Term {
  readonly term: string;
  /** The motif or the placement (by index) it belongs to. */
  readonly motif?: string;
  readonly placement?: number;
  /** Or what it is on hand of. */
  readonly supply?: SupplyOf;
  readonly amount: number;
  readonly unit: string;
  readonly weight: number;
  /** weight x amount. */
  readonly cost: number;
}

export type TermOwner = Pick<Term, "motif" | "placement" | "supply">;

export function makeTerm(
  term: string,
  amount: number,
  unit: string,
  weights: Weights,
  owner: TermOwner,
): Term {
  const weight = weightOf(weights, term);
  return { term, ...owner, amount, unit, weight, cost: weight * amount };
}

/** How far a value is from the preferred one; 0 where no preference is stated. */
export const awayFrom = ({ prefer }: Preference, value: number): number =>
  prefer === undefined ? 0 : Math.abs(value - prefer);

export const costOf = (terms: readonly Term[]): number => terms.reduce((sum, { cost }) => sum + cost, 0);
