import { zeroMeets } from "./constant-rows.ts";
import { mergedTerms } from "./merged-terms.ts";
import type { Column, Program, Row, Term } from "./program.ts";

/** A smaller program with the same optimum, and the way back. */
export interface Merged {
  readonly program: Program;
  /** The point of the given program that belongs to a point of the smaller one. */
  readonly expand: (point: readonly number[]) => number[];
}

/**
 * Makes one column out of columns that a row holds equal (`a * x - a * y = 0`, both whole or neither, both with
 * one upper bound), and drops the rows that say nothing after that: those that cancel out, and repeated ones.
 *
 * Where every option has one partner, as in a tree of choices whose dominated options are dropped, this leaves one
 * row of the whole tree. The points of the two programs correspond one to one and at the same cost, so bounds and
 * proofs carry over.
 */
export function mergeTwins(given: Program): Merged {
  const same = new Array<number>(given.columns.length).fill(0).map((_, column) => column);
  const leader = (column: number): number => {
    let top = column;
    while (same[top]! !== top) top = same[top]!;
    same[column] = top;
    return top;
  };
  const throughLeaders = (terms: readonly Term[]): Term[] =>
    mergedTerms(terms.map(([column, coefficient]): Term => [leader(column), coefficient]));

  let rows = given.rows.map((row) => ({ ...row, terms: throughLeaders(row.terms) }));
  for (let merging = true; merging; ) {
    merging = false;
    for (const row of rows) {
      if (!holdsEqual(row, given.columns)) continue;
      const [a, b] = row.terms.map(([column]) => leader(column)) as [number, number];
      if (a === b) continue;
      same[Math.max(a, b)] = Math.min(a, b);
      merging = true;
    }
    if (merging) rows = rows.map((row) => ({ ...row, terms: throughLeaders(row.terms) }));
  }

  const position = new Map<number, number>();
  const columns: Column[] = [];
  given.columns.forEach((column, index) => {
    const top = leader(index);
    const known = position.get(top);
    if (known === undefined) {
      position.set(top, columns.length);
      columns.push(column);
    } else columns[known] = { ...columns[known]!, cost: columns[known]!.cost + column.cost };
  });
  const positions = given.columns.map((_, index) => position.get(leader(index))!);
  const renumbered = rows.map((row) => ({
    ...row,
    terms: row.terms.map(([column, coefficient]): Term => [positions[column]!, coefficient]),
  }));
  return {
    program: { columns, rows: withoutEmptyAndRepeated(renumbered) },
    expand: (point) => positions.map((column) => point[column]!),
  };
}

function holdsEqual(row: Row, columns: readonly Column[]): boolean {
  const [a, b, more] = row.terms;
  if (a === undefined || b === undefined || more !== undefined) return false;
  if (row.relation !== "=" || row.bound !== 0 || a[1] !== -b[1]) return false;
  const [x, y] = [columns[a[0]]!, columns[b[0]]!];
  return x.whole === y.whole && x.upper === y.upper;
}

/** Empty rows that do not hold are kept: the engine has to say that the program has no point. */
function withoutEmptyAndRepeated(rows: readonly Row[]): Row[] {
  const seen = new Set<string>();
  return rows.filter(({ terms, relation, bound }) => {
    if (terms.length === 0) return !zeroMeets(relation, bound);
    const sorted = [...terms].sort(([a], [b]) => a - b);
    const key = `${relation} ${bound} ${sorted.join(" ")}`;
    return !seen.has(key) && seen.add(key);
  });
}
