import { EQUAL_COST } from "../indexed-choice.ts";

/** Options of some of the groups, taken together. */
export interface Taken {
  /** What they add up to, by measured row. */
  readonly amounts: readonly number[];
  readonly cost: number;
  /** Which option of which group; each group at most once. */
  readonly picks: readonly (readonly [group: number, option: number])[];
}

/** Nothing taken yet. */
export const nothing = (measured: number): Taken => ({
  amounts: new Array<number>(measured).fill(0),
  cost: 0,
  picks: [],
});

/**
 * Those that no other surpasses, by rising amounts: one is surpassed by another that has no more of anything and less
 * of something. Of several with the same amounts only the cheapest is kept, and of equally cheap ones the first.
 */
export function unsurpassed(all: readonly Taken[]): readonly Taken[] {
  const sorted = [...all].sort(byAmounts);
  const kept: Taken[] = [];
  for (const one of sorted) {
    const last = kept.at(-1);
    if (last !== undefined && alike(last.amounts, one.amounts)) {
      if (one.cost < last.cost - EQUAL_COST) kept[kept.length - 1] = one;
      continue;
    }
    // Whatever surpasses it stands before it.
    if (!surpassedIn(kept, one.amounts)) kept.push(one);
  }
  return kept;
}

/** Every sum of one of these and one of those, as far as nothing surpasses it. */
export const sums = (these: readonly Taken[], those: readonly Taken[]): readonly Taken[] =>
  unsurpassed(these.flatMap((one) => those.map((other) => together(one, other))));

const together = (one: Taken, other: Taken): Taken => ({
  amounts: one.amounts.map((amount, index) => amount + other.amounts[index]!),
  cost: one.cost + other.cost,
  picks: [...one.picks, ...other.picks],
});

/** With two amounts, and the first of them rising, the last one kept has least of the second. */
const surpassedIn = (kept: readonly Taken[], amounts: readonly number[]): boolean =>
  amounts.length <= 2
    ? kept.length > 0 && kept.at(-1)!.amounts.at(-1)! <= amounts.at(-1)!
    : kept.some((other) => noMore(other.amounts, amounts));

/** Whether there is no more of anything in one than in the other. */
export const noMore = (one: readonly number[], other: readonly number[]): boolean =>
  one.every((amount, index) => amount <= other[index]!);

export const alike = (one: readonly number[], other: readonly number[]): boolean =>
  one.every((amount, index) => amount === other[index]);

export function byAmounts(
  { amounts: a }: Pick<Taken, "amounts">,
  { amounts: b }: Pick<Taken, "amounts">,
): number {
  const at = a.findIndex((amount, index) => amount !== b[index]);
  return at < 0 ? 0 : a[at]! - b[at]!;
}
