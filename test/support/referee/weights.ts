export type Weights = Readonly<Record<string, number>>;

const standard: Weights = { length: 3, balance: 0.5, ease: 1, interval: 1.5, spread: 1.2 };

/** The weight of a named term: the garment's own, else the standard one, else 1. */
export const weightOf = (weights: Weights, term: string): number => weights[term] ?? standard[term] ?? 1;

/** How far a value is from what is preferred; nothing where nothing is. */
export const amountBeside = (prefer: number | undefined, value: number): number =>
  prefer === undefined ? 0 : Math.abs(value - prefer);
