/** One way through so many repeats: the index of what is worked at each of them. */
export interface PathThrough {
  readonly steps: readonly number[];
  readonly cost: number;
}

/** What may be worked at each repeat, and what it costs after what was worked below. */
export interface Stairs {
  readonly repeats: number;
  /** How many things there are to choose from at each repeat. */
  readonly width: number;
  /** Cost of a step at a repeat (from 0), after another at the repeat below; infinite where it cannot be. */
  readonly cost: (repeat: number, to: number, from: number | undefined) => number;
}

/**
 * The cheapest ways through, in rising order of cost: the k shortest paths of a layered graph, of which each node keeps
 * as many as are asked for (R. Bellman and R. Kalaba, "On k-th best policies", J. SIAM 8, 1960, from memory).
 *
 * @param keep how many ways are wanted; fewer are returned where there are fewer
 */
export function cheapestPaths({ repeats, width, cost }: Stairs, keep: number): readonly PathThrough[] {
  let here: readonly (readonly PathThrough[])[] = Array.from({ length: width }, (_, to) => {
    const first = cost(0, to, undefined);
    return first === Number.POSITIVE_INFINITY ? [] : [{ steps: [to], cost: first }];
  });
  for (let repeat = 1; repeat < repeats; repeat++) {
    const below = here;
    here = Array.from({ length: width }, (_, to) =>
      cheapest(
        below.flatMap((paths, from) => {
          const more = cost(repeat, to, from);
          return more === Number.POSITIVE_INFINITY
            ? []
            : paths.map((path) => ({ steps: [...path.steps, to], cost: path.cost + more }));
        }),
        keep,
      ),
    );
  }
  return cheapest(here.flat(), keep);
}

const cheapest = (paths: readonly PathThrough[], keep: number): PathThrough[] =>
  [...paths].sort((a, b) => a.cost - b.cost).slice(0, keep);
