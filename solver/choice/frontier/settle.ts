import { FEASIBILITY_TOLERANCE } from "../../feasibility.ts";
import { propagate } from "../propagate.ts";
import { nothing, sums, type Taken, unsurpassed } from "./front.ts";
import { type Part, partOf, takenOf } from "./part.ts";

/** Thrown where settling takes more work than it was given. */
export class TooMuchToSettle extends Error {
  override readonly name = "TooMuchToSettle";
}

/**
 * What no other way to pick surpasses, by settling one group after the other: groups that no row ties together any
 * more add up, whatever is taken of each, so that the unsurpassed sums are sums of what is unsurpassed in each (if a
 * part of a sum were surpassed, so would the sum be). Where rows still tie groups together, one of them is settled:
 * for every class of its options that are alike in these rows, the rest is found in the same way. In a tree of
 * choices one group at a hub is all there is to settle.
 *
 * Exact, and without an engine: nothing is left out but what cannot be taken or is surpassed.
 *
 * @param work how many options, classes and sums may be looked at
 * @throws TooMuchToSettle where that is not enough
 */
export function settled(part: Part, work: number): readonly Taken[] {
  let left = work;
  const spend = (amount: number): void => {
    left -= amount;
    if (left < 0) throw new TooMuchToSettle();
  };
  return front(part);

  function front(part: Part): readonly Taken[] {
    spend(part.kept.reduce((sum, options) => sum + options.length, 0));
    const kept = propagate(part.indexed, part.kept);
    if (kept === undefined) return [];
    const possible = { ...part, kept };
    let found: readonly Taken[] = [nothing(part.measured.length)];
    for (const { groups, rows } of tiedGroups(possible)) {
      const [group, ...others] = groups;
      const ofGroups =
        others.length === 0
          ? unsurpassed(kept[group!]!.map((option) => takenOf(possible, group!, option)))
          : tiedFront(partOf(possible, groups, rows));
      if (ofGroups.length === 0) return [];
      spend(found.length * ofGroups.length);
      found = sums(found, ofGroups);
    }
    return found;
  }

  /** The same where all groups are tied together: by every class of one of them. */
  function tiedFront(part: Part): readonly Taken[] {
    const ties = part.indexed.choice.rows.map(({ bound }) => Number.isFinite(bound));
    const classes = part.kept.map((options, group) => classesOf(part, group, options, ties));
    const hub = hubOf(part, classes, ties);
    return unsurpassed(
      classes[hub]!.flatMap((ofClass) =>
        front({ ...part, kept: part.kept.map((options, group) => (group === hub ? ofClass : options)) }),
      ),
    );
  }
}

/** A group with the rows through which most others hang on it; of several the one with fewest classes. */
function hubOf(part: Part, classes: readonly (readonly number[])[][], ties: readonly boolean[]): number {
  const others = part.kept.map((options, group) => {
    const rows = rowsOf(part, group, options).filter((row) => ties[row]);
    return part.kept.filter((those, other) => {
      const theirs = new Set(rowsOf(part, other, those));
      return other !== group && rows.some((row) => theirs.has(row));
    }).length;
  });
  const order = part.kept.map((_, group) => group).filter((group) => classes[group]!.length > 1);
  order.sort((a, b) => others[b]! - others[a]! || classes[a]!.length - classes[b]!.length);
  return order[0] ?? 0;
}

/** Options that are alike in every row that ties. */
function classesOf(
  { indexed }: Part,
  group: number,
  options: readonly number[],
  ties: readonly boolean[],
): (readonly number[])[] {
  const classes = new Map<string, number[]>();
  for (const option of options) {
    const key = indexed.groups[group]!.terms[option]!.flatMap(([row, amount]) =>
      ties[row] ? [row, amount] : [],
    ).join();
    const known = classes.get(key);
    if (known) known.push(option);
    else classes.set(key, [option]);
  }
  return [...classes.values()];
}

interface Tied {
  readonly groups: readonly number[];
  /** The rows that tie them together and can still be broken. */
  readonly rows: ReadonlySet<number>;
}

/** The groups in as many sets as there are without a row between two of them that could be broken. */
function tiedGroups(part: Part): readonly Tied[] {
  const live = liveRows(part);
  const sets: { groups: number[]; rows: Set<number> }[] = [];
  part.kept.forEach((options, group) => {
    const rows = new Set(rowsOf(part, group, options).filter((row) => live[row]));
    const joined = sets.filter((set) => [...rows].some((row) => set.rows.has(row)));
    for (const set of joined) sets.splice(sets.indexOf(set), 1);
    sets.push({
      groups: [...joined.flatMap(({ groups }) => groups), group].sort((a, b) => a - b),
      rows: new Set([...rows, ...joined.flatMap((set) => [...set.rows])]),
    });
  });
  return sets;
}

function rowsOf({ indexed }: Part, group: number, options: readonly number[]): readonly number[] {
  const rows = new Set<number>();
  for (const option of options) for (const [row] of indexed.groups[group]!.terms[option]!) rows.add(row);
  return [...rows];
}

/** Rows that some of the options left, one of each group, would break. */
function liveRows({ indexed, kept }: Part): readonly boolean[] {
  const { rows } = indexed.choice;
  const low = new Float64Array(rows.length);
  const high = new Float64Array(rows.length);
  kept.forEach((options, group) => {
    const reach = new Map<number, { low: number; high: number; count: number }>();
    for (const option of options)
      for (const [row, amount] of indexed.groups[group]!.terms[option]!) {
        const known = reach.get(row) ?? { low: amount, high: amount, count: 0 };
        reach.set(row, {
          low: Math.min(known.low, amount),
          high: Math.max(known.high, amount),
          count: known.count + 1,
        });
      }
    for (const [row, { low: least, high: most, count }] of reach) {
      const some = count < options.length;
      low[row]! += some ? Math.min(0, least) : least;
      high[row]! += some ? Math.max(0, most) : most;
    }
  });
  return rows.map(
    ({ relation, bound }, row) =>
      (relation !== ">=" && high[row]! > bound + FEASIBILITY_TOLERANCE) ||
      (relation !== "<=" && low[row]! < bound - FEASIBILITY_TOLERANCE),
  );
}
