import type { Column, Program, Row, Term } from "../program.ts";
import type { ChoiceProgram } from "./choice-program.ts";
import { type IndexedChoice, indexChoice, undominated } from "./indexed-choice.ts";

/** For each group the options that may be taken, by index. */
export type Keep = readonly (readonly number[])[];

/** A choice program written as a linear program, and what its columns stand for. */
export interface ChoiceColumns {
  readonly program: Program;
  /** For each column of the program, which option of which group it takes. */
  readonly options: readonly (readonly [group: number, option: number])[];
}

/**
 * One 0/1 column for each option, one row `= 1` for each group, and the rows that tie groups together, those
 * included that no option enters. Options that another option of the group makes needless ({@link undominated}) are
 * not written: of those alike in every row only the cheapest is, and of equally cheap ones the first.
 *
 * @param keep options that may be taken, where not all may
 */
export function toProgram(choice: ChoiceProgram, keep?: Keep): ChoiceColumns {
  const indexed = indexChoice(choice);
  const kept = indexed.groups.map((group, number) => {
    const among = keep === undefined ? undefined : new Set(keep[number]);
    return undominated(group, (option) => among === undefined || among.has(option));
  });
  return columnsOf(indexed, kept);
}

/** {@link toProgram} for options that are known to be undominated. */
export function columnsOf({ choice, groups }: IndexedChoice, kept: Keep): ChoiceColumns {
  const columns: Column[] = [];
  const options: [number, number][] = [];
  const tied: Term[][] = choice.rows.map(() => []);
  const takeOne: Row[] = choice.groups.map(({ name, options: all }, group) => {
    const terms = (kept[group] ?? []).map((option): Term => {
      const column = columns.length;
      columns.push({
        name: `${name}.${all[option]!.name}`,
        cost: all[option]!.cost,
        whole: true,
        upper: 1,
      });
      options.push([group, option]);
      for (const [row, coefficient] of groups[group]!.terms[option]!) tied[row]!.push([column, coefficient]);
      return [column, 1];
    });
    return { name: `one.${name}`, terms, relation: "=", bound: 1 };
  });
  const ties = choice.rows.map((row, index): Row => ({ ...row, terms: tied[index]! }));
  return { program: { columns, rows: [...takeOne, ...ties] }, options };
}
