import type { Program } from "./program.ts";

/**
 * The point that an engine came to, and its cost worked out anew from the program. The engine's tolerance may leave a
 * value a hair below zero, or a whole one a hair beside it.
 *
 * @param valueAt the engine's value for a column, by its place in the program
 */
export function pointOf(
  { columns }: Program,
  valueAt: (column: number) => number,
): { readonly point: number[]; readonly cost: number } {
  const point = columns.map(({ whole }, column) => {
    const value = valueAt(column);
    return Math.max(0, whole ? Math.round(value) : value);
  });
  return { point, cost: columns.reduce((sum, { cost }, column) => sum + cost * point[column]!, 0) };
}
