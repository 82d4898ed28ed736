import type { Row } from "./program.ts";

/**
 * The greatest value each column can take by the rows alone: a row `sum of a * x <= b` or `= b` with no negative
 * coefficient keeps x at or below b / a, because no x is negative.
 *
 * @returns one value for each column, infinity where no row limits it
 */
export function impliedUpperBounds(columns: number, rows: readonly Row[]): Float64Array {
  const most = new Float64Array(columns).fill(Number.POSITIVE_INFINITY);
  for (const { relation, bound, terms } of rows) {
    if (relation === ">=" || terms.some(([, coefficient]) => coefficient < 0)) continue;
    for (const [column, coefficient] of terms)
      if (coefficient > 0) most[column] = Math.min(most[column] ?? 0, bound / coefficient);
  }
  return most;
}
