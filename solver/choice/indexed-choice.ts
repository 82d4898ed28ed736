import { mergedTerms } from "../merged-terms.ts";
import type { ChoiceProgram, ChoiceRow, Group, Option } from "./choice-program.ts";

/** A choice program with what has to be looked up again and again worked out once. */
export interface IndexedChoice {
  readonly choice: ChoiceProgram;
  readonly groups: readonly IndexedGroup[];
}

/** Options are meant by their index in the group's list. */
export interface IndexedGroup {
  /** For each option: its terms, each row once and none zero, in the order of the rows. */
  readonly terms: readonly (readonly (readonly [row: number, coefficient: number])[])[];
  readonly costs: Float64Array;
  /** For each option: its face, by a number that stands for it in this group. */
  readonly faces: Int32Array;
  readonly classes: readonly OptionClass[];
  /**
   * For each option: its terms in the other rows, turned so that less is never worse (a `>=` row's sign is
   * changed).
   */
  readonly burdens: readonly (readonly (readonly [row: number, amount: number])[])[];
}

/** Options of a group that are alike in every `=` row. */
interface OptionClass {
  /** By rising cost, and then in list order. */
  readonly options: number[];
  /** Whether any of them enters a row other than `=`. */
  burdened: boolean;
}

/**
 * Costs nearer to each other than this are one cost, and the option that stands first in the list is taken. They
 * are sums of a few terms below 1e4, whose rounding is below 1e-11; no preference of a person is finer than 1e-9.
 */
export const EQUAL_COST = 1e-9;

/**
 * The same choice program is indexed once, however often it is solved.
 *
 * @throws RangeError where a term names a row that is not there or a number is not finite
 */
export function indexChoice(choice: ChoiceProgram): IndexedChoice {
  const known = indexed.get(choice);
  if (known !== undefined) return known;
  const made = { choice, groups: choice.groups.map((group) => indexGroup(group, choice.rows)) };
  indexed.set(choice, made);
  return made;
}

const indexed = new WeakMap<ChoiceProgram, IndexedChoice>();

function indexGroup(group: Group, rows: readonly ChoiceRow[]): IndexedGroup {
  const terms = group.options.map((option) => {
    for (const [row, coefficient] of option.terms)
      if (rows[row] === undefined || !Number.isFinite(coefficient))
        throw new RangeError(`option "${option.name}" adds ${coefficient} to row ${row} of ${rows.length}`);
    if (!Number.isFinite(option.cost))
      throw new RangeError(`option "${option.name}" costs ${option.cost}, not a finite number`);
    return inOrder(option.terms);
  });
  const costs = Float64Array.from(group.options, ({ cost }) => cost);
  const faceNumbers = new Map<string, number>();
  const faces = Int32Array.from(group.options, ({ face }) => numberOf(faceNumbers, face));

  const classNumbers = new Map<string, number>();
  const classes: OptionClass[] = [];
  const burdens = terms.map((of, option) => {
    let key = "";
    const burden: [number, number][] = [];
    for (const [row, coefficient] of of) {
      const { relation } = rows[row]!;
      if (relation === "=") key += `${row} ${coefficient} `;
      else burden.push([row, relation === "<=" ? coefficient : -coefficient]);
    }
    const number = numberOf(classNumbers, key);
    classes[number] ??= { options: [], burdened: false };
    classes[number].options.push(option);
    classes[number].burdened ||= burden.length > 0;
    return burden;
  });
  for (const { options } of classes) options.sort((a, b) => costs[a]! - costs[b]! || a - b);
  return { terms, costs, faces, classes, burdens };
}

/** Each row once, rising, none zero; most callers' lists are in that order already. */
function inOrder(terms: Option["terms"]): Option["terms"] {
  const ordered = terms.every(
    ([row, coefficient], index) => coefficient !== 0 && (index === 0 || terms[index - 1]![0] < row),
  );
  return ordered ? terms : mergedTerms(terms).sort(([a], [b]) => a - b);
}

function numberOf(numbers: Map<string, number>, key: string): number {
  const known = numbers.get(key);
  if (known !== undefined) return known;
  numbers.set(key, numbers.size);
  return numbers.size - 1;
}

/**
 * The allowed options that no other allowed option makes needless, in list order. An option makes another needless
 * when it costs no more, is alike in every `=` row, and asks no more of any `<=` row and gives no less to any `>=`
 * row: whatever can be picked with the other can then be picked with it. Of options that are alike in all of that
 * ({@link EQUAL_COST}) the first in the list is kept.
 */
export function undominated(group: IndexedGroup, allowed: (option: number) => boolean): number[] {
  const kept: number[] = [];
  for (const { options, burdened } of group.classes) {
    let frontier: number[] = [];
    for (const option of options) {
      const [cheapest] = frontier;
      if (cheapest !== undefined && !burdened && !costsAlike(group, cheapest, option)) break;
      if (!allowed(option)) continue;
      if (frontier.some((other) => makesNeedless(group, other, option))) continue;
      frontier = frontier.filter((other) => !makesNeedless(group, option, other));
      frontier.push(option);
    }
    kept.push(...frontier);
  }
  return kept.sort((a, b) => a - b);
}

/** Whether `option` makes `other`, of the same class, needless; of two that are alike the later in the list. */
function makesNeedless(group: IndexedGroup, option: number, other: number): boolean {
  const alike = costsAlike(group, option, other);
  if (!alike && group.costs[option]! > group.costs[other]!) return false;
  const [own, others] = [group.burdens[option]!, group.burdens[other]!];
  return asksNoMore(own, others) && (option < other || !alike || !asksNoMore(others, own));
}

const costsAlike = ({ costs }: IndexedGroup, option: number, other: number): boolean =>
  Math.abs(costs[option]! - costs[other]!) <= EQUAL_COST;

type Burden = IndexedGroup["burdens"][number];

/** Whether `a` is at most `b` in every row; a row that is not named counts 0. Both name their rows rising. */
function asksNoMore(a: Burden, b: Burden): boolean {
  let at = 0;
  for (const [row, amount] of a) {
    for (; at < b.length && b[at]![0] < row; at++) if (b[at]![1] < 0) return false;
    const other = b[at]?.[0] === row ? b[at++]![1] : 0;
    if (amount > other) return false;
  }
  for (; at < b.length; at++) if (b[at]![1] < 0) return false;
  return true;
}
