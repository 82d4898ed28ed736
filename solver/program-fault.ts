import type { Program } from "./program.ts";

/**
 * What makes a program impossible to hand to an engine, as a sentence for people, or undefined.
 *
 * Engines compute on with NaN and call the result feasible, so such numbers are stopped here.
 */
export function programFault(program: Program): string | undefined {
  for (const { name, cost, upper } of program.columns) {
    if (!Number.isFinite(cost)) return `The cost of column "${name}" is ${cost}, not a finite number.`;
    if (upper !== undefined && !Number.isFinite(upper))
      return `The upper bound of column "${name}" is ${upper}, not a finite number.`;
  }
  for (const { name, bound, terms } of program.rows) {
    if (!Number.isFinite(bound)) return `The bound of row "${name}" is ${bound}, not a finite number.`;
    for (const [column, coefficient] of terms) {
      const entered = program.columns[column];
      if (entered === undefined) return `Row "${name}" names column ${column}, which is not there.`;
      if (!Number.isFinite(coefficient))
        return `The coefficient of column "${entered.name}" in row "${name}" is ${coefficient}, not a finite number.`;
    }
  }
  return undefined;
}
