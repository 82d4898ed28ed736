/** What something costs, and what else is read of it. */
export interface Rated {
  readonly cost: number;
  /** Amounts of which less is never worse. */
  readonly least: readonly number[];
  /** Amounts of which neither less nor more is better. */
  readonly exact: readonly number[];
}

/**
 * As many of the cheapest as may be wanted, whatever the amounts have to come to: one is let go where so many others
 * cost no more, take no more of what less is better of, and are alike in the rest. Wherever it could be taken any of
 * those could be taken instead.
 */
export function cheapestOfEach<Item>(
  items: readonly Item[],
  keep: number,
  rate: (item: Item) => Rated,
): Item[] {
  const rated = items.map((item) => ({ item, ...rate(item) })).sort((a, b) => a.cost - b.cost);
  const alike = new Map<string, (readonly number[])[]>();
  return rated
    .filter(({ least, exact }) => {
      const others = alike.get(exact.join()) ?? [];
      alike.set(exact.join(), others);
      let better = 0;
      for (const other of others) if (other.every((amount, index) => amount <= least[index]!)) better++;
      if (better >= keep) return false;
      others.push(least);
      return true;
    })
    .map(({ item }) => item);
}
