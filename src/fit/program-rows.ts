import type { ChoiceRow } from "../../solver/choice.ts";

/** What one option has of each row that it is in. */
export type Terms = [row: number, coefficient: number][];

/** The rows of a choice program while it is written. */
export interface Rows {
  readonly list: ChoiceRow[];
  /** The row of a name, made where there is none of it yet. */
  at(name: string, relation: ChoiceRow["relation"], bound: number): number;
}

export function createRows(): Rows {
  const list: ChoiceRow[] = [];
  const known = new Map<string, number>();
  return {
    list,
    at(name, relation, bound) {
      const row = known.get(name) ?? list.push({ name, relation, bound }) - 1;
      known.set(name, row);
      return row;
    },
  };
}
