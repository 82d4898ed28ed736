import type { Program } from "./program.ts";

/** One thing that a point breaks, and by how much. */
export interface Violation {
  readonly kind: "row" | "lower bound" | "upper bound" | "wholeness";
  /** Of the row or the column. */
  readonly name: string;
  /** How far beyond; NaN where the value itself is not a number. */
  readonly amount: number;
}

/**
 * How far a row, a bound or a whole number may be missed. Engines work to 1e-6 or better on programs whose
 * coefficients are near 1; what is chosen by such a program is rounded to whole numbers afterwards.
 */
export const FEASIBILITY_TOLERANCE = 1e-6;

/**
 * Everything that a point breaks in a program; empty means that the point is feasible. Written apart from the
 * engines' adapters, so that it can referee them.
 *
 * @throws RangeError where the point does not have one value for each column
 */
export function violations(
  program: Program,
  point: readonly number[],
  tolerance: number = FEASIBILITY_TOLERANCE,
): readonly Violation[] {
  if (point.length !== program.columns.length)
    throw new RangeError(`a point of ${point.length} values for ${program.columns.length} columns`);
  const found: Violation[] = [];
  const report = (kind: Violation["kind"], name: string, amount: number) => {
    // Written so that NaN is reported as well.
    if (!(amount <= tolerance)) found.push({ kind, name, amount });
  };

  program.columns.forEach((column, index) => {
    const value = point[index]!;
    report("lower bound", column.name, -value);
    if (column.upper !== undefined) report("upper bound", column.name, value - column.upper);
    if (column.whole) report("wholeness", column.name, Math.abs(value - Math.round(value)));
  });
  for (const row of program.rows) {
    let activity = 0;
    for (const [column, coefficient] of row.terms) activity += coefficient * (point[column] ?? Number.NaN);
    const excess = activity - row.bound;
    if (row.relation === "<=") report("row", row.name, excess);
    else if (row.relation === ">=") report("row", row.name, -excess);
    else report("row", row.name, Math.abs(excess));
  }
  return found;
}
