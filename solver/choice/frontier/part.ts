import type { ChoiceProgram } from "../choice-program.ts";
import { type IndexedChoice, indexChoice, undominated } from "../indexed-choice.ts";
import type { Keep } from "../to-program.ts";
import type { Taken } from "./front.ts";

/** Some groups of a choice program with some of their options, and the rows that can still be broken by them. */
export interface Part {
  readonly indexed: IndexedChoice;
  /** Options that may be taken, by group of the part. */
  readonly kept: Keep;
  /** Its rows that are measured. */
  readonly measured: readonly number[];
  /** What a group and its options are in the whole: by group its number and that of each option. */
  readonly whole: readonly { readonly group: number; readonly options: readonly number[] }[];
}

/** All of a choice program, without what is needless whatever is asked. */
export function wholePart(choice: ChoiceProgram, measured: readonly number[]): Part {
  const indexed = indexChoice(choice);
  return {
    indexed,
    kept: indexed.groups.map((group) => undominated(group, () => true)),
    measured,
    whole: choice.groups.map(({ options }, group) => ({
      group,
      options: options.map((_, option) => option),
    })),
  };
}

/** A part of its own of some of a part's groups, with the rows that matter among them and those that are measured. */
export function partOf(
  { indexed, kept, measured, whole }: Part,
  groups: readonly number[],
  rows: ReadonlySet<number>,
): Part {
  const numbers = [...new Set([...rows, ...measured])].sort((a, b) => a - b);
  const rowAt = new Map(numbers.map((row, at) => [row, at]));
  const choice: ChoiceProgram = {
    rows: numbers.map((row) => {
      const { bound, ...rest } = indexed.choice.rows[row]!;
      return { ...rest, bound: rows.has(row) ? bound : Number.POSITIVE_INFINITY };
    }),
    groups: groups.map((group) => ({
      name: indexed.choice.groups[group]!.name,
      options: kept[group]!.map((option) => ({
        ...indexed.choice.groups[group]!.options[option]!,
        terms: indexed.groups[group]!.terms[option]!.flatMap(([row, coefficient]) =>
          rowAt.has(row) ? [[rowAt.get(row)!, coefficient] as const] : [],
        ),
      })),
    })),
  };
  const made = wholePart(
    choice,
    measured.map((row) => rowAt.get(row)!),
  );
  return {
    ...made,
    whole: groups.map((group) => ({
      group: whole[group]!.group,
      options: kept[group]!.map((option) => whole[group]!.options[option]!),
    })),
  };
}

/** An option of a part taken by itself. */
export function takenOf({ indexed, measured, whole }: Part, group: number, option: number): Taken {
  const terms = indexed.groups[group]!.terms[option]!;
  return {
    amounts: measured.map((row) => terms.find(([at]) => at === row)?.[1] ?? 0),
    cost: indexed.groups[group]!.costs[option]!,
    picks: [[whole[group]!.group, whole[group]!.options[option]!]],
  };
}
