import type { Relation } from "./program.ts";

/**
 * Slack for a row that no column enters: its bound is a sum of the caller's numbers, so it may miss zero by
 * their rounding; as wide as the tolerance that engines allow a row.
 */
const ROUNDING = 1e-6;

/** Whether `0 relation bound` holds. */
export function zeroMeets(relation: Relation, bound: number): boolean {
  if (relation === "<=") return bound >= -ROUNDING;
  if (relation === ">=") return bound <= ROUNDING;
  return Math.abs(bound) <= ROUNDING;
}
