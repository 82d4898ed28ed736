/** Two amounts that a way through adds up, such as ease and how far a quantity is from the preferred one. */
export type Amounts = readonly [number, number];

export interface MeasuredPath {
  /** The index of what is worked at each repeat. */
  readonly steps: readonly number[];
  readonly amounts: Amounts;
}

/** What may be worked at each repeat, and what it adds. */
export interface MeasuredStairs {
  readonly repeats: number;
  /** How many things there are to choose from at each repeat. */
  readonly width: number;
  /** Of a step at a repeat (from 0), after another at the repeat below; undefined where it cannot be. */
  readonly amounts: (repeat: number, to: number, from: number | undefined) => Amounts | undefined;
}

/**
 * The ways through that no other surpasses, having no more of either amount: at each node of the layered graph as many
 * are kept as are not surpassed there, since what surpasses a part of a way surpasses the whole (P. Hansen, "Bicriterion
 * path problems", 1980, from memory). Whatever weighs both amounts finds its cheapest way among them.
 */
export function unsurpassedPaths({ repeats, width, amounts }: MeasuredStairs): readonly MeasuredPath[] {
  let here: (readonly MeasuredPath[])[] = Array.from({ length: width }, (_, to) => {
    const first = amounts(0, to, undefined);
    return first ? [{ steps: [to], amounts: first }] : [];
  });
  for (let repeat = 1; repeat < repeats; repeat++) {
    const below = here;
    here = Array.from({ length: width }, (_, to) =>
      unsurpassed(
        below.flatMap((paths, from) => {
          const more = amounts(repeat, to, from);
          return more
            ? paths.map(
                ({ steps, amounts: [one, other] }): MeasuredPath => ({
                  steps: [...steps, to],
                  amounts: [one + more[0], other + more[1]],
                }),
              )
            : [];
        }),
      ),
    );
  }
  return unsurpassed(here.flat());
}

function unsurpassed(paths: readonly MeasuredPath[]): readonly MeasuredPath[] {
  const rising = [...paths].sort((a, b) => a.amounts[0] - b.amounts[0] || a.amounts[1] - b.amounts[1]);
  let least = Number.POSITIVE_INFINITY;
  return rising.filter(({ amounts: [, other] }) => {
    const kept = other < least;
    least = Math.min(least, other);
    return kept;
  });
}
