import { FEASIBILITY_TOLERANCE } from "../feasibility.ts";
import type { IndexedChoice } from "./indexed-choice.ts";
import type { Keep } from "./to-program.ts";

/** Least and greatest that a group can add to a row. */
interface Reach {
  low: number;
  high: number;
  /** How many of the group's options enter the row; the others add 0. */
  entries: number;
}

/**
 * Drops options that cannot be taken together with any options of the other groups, row by row: an option is
 * impossible when the row stays broken even with the others' least (for `<=`, `=`) or greatest (for `>=`, `=`)
 * amounts. What one dropped option rules out elsewhere is dropped in turn. Only impossible options go, so every
 * way to pick is kept.
 *
 * @returns the options left, or undefined where there is no way to pick at all
 */
export function propagate(indexed: IndexedChoice, kept: Keep): Keep | undefined {
  let left = kept;
  for (;;) {
    if (left.some((options) => options.length === 0)) return undefined;
    const reaches = left.map((options, group) => reachOf(indexed.groups[group]!.terms, options));
    const { low, high } = totals(indexed.choice.rows.length, reaches);
    if (
      indexed.choice.rows.some(({ relation, bound }, row) => broken(relation, bound, low[row]!, high[row]!))
    )
      return undefined;

    let dropped = false;
    const next = left.map((options, group) => {
      const reach = reaches[group]!;
      const breaks = (row: number, amount: number): boolean => {
        const { low: least, high: most } = reach.get(row)!;
        const { relation, bound } = indexed.choice.rows[row]!;
        return broken(relation, bound, low[row]! - least + amount, high[row]! - most + amount);
      };
      // Rows that an option of this group must enter, because adding 0 breaks them.
      const must = [...reach].filter(([row, { entries }]) => entries < options.length && breaks(row, 0));
      const mustEnter = new Set(must.map(([row]) => row));
      const possible = options.filter((option) => {
        const terms = indexed.groups[group]!.terms[option]!;
        let entered = 0;
        for (const [row, amount] of terms) {
          if (mustEnter.has(row)) entered += 1;
          if (breaks(row, amount)) return false;
        }
        return entered === mustEnter.size;
      });
      dropped ||= possible.length < options.length;
      return possible;
    });
    if (!dropped) return left;
    left = next;
  }
}

/** As wide as what a referee lets pass, so that nothing is dropped that an engine could answer with. */
function broken(relation: "<=" | "=" | ">=", bound: number, low: number, high: number): boolean {
  return (
    (relation !== ">=" && low > bound + FEASIBILITY_TOLERANCE) ||
    (relation !== "<=" && high < bound - FEASIBILITY_TOLERANCE)
  );
}

function reachOf(
  terms: readonly (readonly (readonly [number, number])[])[],
  options: readonly number[],
): Map<number, Reach> {
  const reach = new Map<number, Reach>();
  for (const option of options)
    for (const [row, amount] of terms[option]!) {
      const known = reach.get(row);
      if (known === undefined) reach.set(row, { low: amount, high: amount, entries: 1 });
      else {
        known.low = Math.min(known.low, amount);
        known.high = Math.max(known.high, amount);
        known.entries += 1;
      }
    }
  for (const known of reach.values())
    if (known.entries < options.length) {
      known.low = Math.min(known.low, 0);
      known.high = Math.max(known.high, 0);
    }
  return reach;
}

function totals(rows: number, reaches: readonly ReadonlyMap<number, Reach>[]) {
  const low = new Float64Array(rows);
  const high = new Float64Array(rows);
  for (const reach of reaches)
    for (const [row, { low: least, high: most }] of reach) {
      low[row]! += least;
      high[row]! += most;
    }
  return { low, high };
}
