/** Amounts of all that is on hand, in the order of the file. */
export type Amounts = readonly number[];

/** Each of some added to each of others. */
export const sumsOf = (some: readonly Amounts[], others: readonly Amounts[]): readonly Amounts[] =>
  some.flatMap((one) => others.map((other) => one.map((amount, index) => amount + other[index]!)));

/** Whether one takes no more of anything than another. */
export const isNoMore = (one: Amounts, other: Amounts): boolean =>
  one.every((amount, index) => amount <= other[index]!);

/** Those that no other surpasses, each once. */
export const leastOf = (ways: readonly Amounts[]): readonly Amounts[] =>
  ways.filter(
    (way, index) => !ways.some((other, at) => isNoMore(other, way) && (at < index || !isNoMore(way, other))),
  );
