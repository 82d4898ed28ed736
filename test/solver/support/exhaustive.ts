import type { ChoiceProgram } from "../../../solver/choice.ts";
import type { Program, Relation } from "../../../solver/program.ts";

/** Holds, with room for the rounding of sums; written here so that the referee shares nothing with the solver. */
const holds = (left: number, relation: Relation, right: number): boolean =>
  relation === "<="
    ? left <= right + 1e-7
    : relation === ">="
      ? left >= right - 1e-7
      : Math.abs(left - right) < 1e-7;

/** Every way to take one number out of each list. */
export function* combinations(sizes: readonly number[]): Generator<number[]> {
  if (sizes.includes(0)) return;
  const at = sizes.map(() => 0);
  for (;;) {
    yield [...at];
    let place = sizes.length - 1;
    while (place >= 0 && at[place] === sizes[place]! - 1) at[place--] = 0;
    if (place < 0) return;
    at[place]! += 1;
  }
}

/** The least cost of a program of whole columns that all have upper bounds, or undefined where it has no point. */
export function leastCost(program: Program): number | undefined {
  let least: number | undefined;
  for (const point of combinations(program.columns.map(({ upper }) => (upper ?? 0) + 1))) {
    const feasible = program.rows.every(({ terms, relation, bound }) =>
      holds(
        terms.reduce((sum, [column, coefficient]) => sum + coefficient * point[column]!, 0),
        relation,
        bound,
      ),
    );
    if (!feasible) continue;
    const cost = program.columns.reduce((sum, column, index) => sum + column.cost * point[index]!, 0);
    if (least === undefined || cost < least) least = cost;
  }
  return least;
}

/** Whether picks keep all rows of a choice program. */
export function keepsRows(choice: ChoiceProgram, picks: readonly number[]): boolean {
  const sums = choice.rows.map(() => 0);
  picks.forEach((option, group) => {
    for (const [row, coefficient] of choice.groups[group]!.options[option]!.terms) sums[row]! += coefficient;
  });
  return choice.rows.every(({ relation, bound }, row) => holds(sums[row]!, relation, bound));
}

export const costOf = (choice: ChoiceProgram, picks: readonly number[]): number =>
  picks.reduce((sum, option, group) => sum + choice.groups[group]!.options[option]!.cost, 0);

export const facesOf = (choice: ChoiceProgram, picks: readonly number[]): string =>
  JSON.stringify(picks.map((option, group) => choice.groups[group]!.options[option]!.face));

/** For each vector of faces that can be shown the least cost of showing it, in rising order of the cost. */
export function costsByFaces(choice: ChoiceProgram): [faces: string, cost: number][] {
  const least = new Map<string, number>();
  for (const picks of combinations(choice.groups.map(({ options }) => options.length))) {
    if (!keepsRows(choice, picks)) continue;
    const faces = facesOf(choice, picks);
    least.set(faces, Math.min(least.get(faces) ?? Infinity, costOf(choice, picks)));
  }
  return [...least].sort(([, a], [, b]) => a - b);
}
