import type { Term } from "./program.ts";

/** The same sum with every column named once and no coefficient zero, in the order of first mention. */
export function mergedTerms(terms: readonly Term[]): Term[] {
  const sums = new Map<number, number>();
  for (const [column, coefficient] of terms) sums.set(column, (sums.get(column) ?? 0) + coefficient);
  return [...sums].filter(([, coefficient]) => coefficient !== 0);
}
