import type { Relation } from "../program.ts";

/** One option of each group is taken, at the least cost; rows tie the groups together. */
export interface ChoiceProgram {
  readonly groups: readonly Group[];
  readonly rows: readonly ChoiceRow[];
}

export interface ChoiceRow {
  readonly name: string;
  readonly relation: Relation;
  readonly bound: number;
}

export interface Group {
  readonly name: string;
  /** In order of preference: of options that are alike in cost and in every row the first is taken. */
  readonly options: readonly Option[];
}

export interface Option {
  readonly name: string;
  readonly cost: number;
  /** What taking it adds to the rows, by index into the choice program's rows. */
  readonly terms: readonly (readonly [row: number, coefficient: number])[];
  /** What a person would notice: options of a group with the same face look alike. */
  readonly face: string;
}

/** One option of each group. */
export interface Picks {
  readonly status: "picked";
  /** Index of the option taken in each group. */
  readonly picks: readonly number[];
  /** Sum of the costs of the options taken. */
  readonly cost: number;
  /** No picks of the kind that was asked for cost less than this; minus infinity where no bound is known. */
  readonly bound: number;
  /** Whether it is certain that nothing of the kind that was asked for costs less. */
  readonly proven: boolean;
  /** Branch and bound nodes that were solved to find and prove it. */
  readonly nodes: number;
  readonly engine: string;
  /** In plain words, that another engine had to take over. */
  readonly note?: string;
}

/** Why there are no picks. */
export type NoPicks =
  | { readonly status: "infeasible"; readonly nodes: number; readonly engine: string; readonly note?: string }
  | { readonly status: "stopped"; readonly nodes: number; readonly engine: string; readonly note?: string }
  | { readonly status: "failed"; readonly reason: string; readonly engine: string; readonly note?: string };

/** The next best picks, in rising cost. */
export interface Rivals {
  readonly list: readonly Picks[];
  /** Whether it is certain that the list is right and that, where it is short, there are no more. */
  readonly proven: boolean;
  /** All nodes solved for the list, those of subproblems that did not make it included. */
  readonly nodes: number;
  readonly note?: string;
}
