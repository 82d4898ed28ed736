import { cheapestOfEach, type Rated } from "../on-hand/cheapest-of-each.ts";

/** One way through so many repeats: the index of what is worked at each of them, and what all of it adds up to. */
export interface RatedPath extends Rated {
  readonly steps: readonly number[];
}

/** What may be worked at each repeat. */
export interface RatedStairs {
  readonly repeats: number;
  /** How many things there are to choose from at each repeat. */
  readonly width: number;
  /** What a step at a repeat (from 0) adds, after another at the repeat below; undefined where it cannot be. */
  readonly rate: (repeat: number, to: number, from: number | undefined) => Rated | undefined;
}

/**
 * As many of the cheapest ways through as may be wanted, whatever the amounts have to come to. Costs and amounts add up,
 * so what is needless as a part of a way is needless in the whole of it.
 */
export function ratedPaths({ repeats, width, rate }: RatedStairs, keep: number): readonly RatedPath[] {
  const few = (paths: readonly RatedPath[]): readonly RatedPath[] =>
    cheapestOfEach(paths, keep, (path) => path);
  let here: readonly (readonly RatedPath[])[] = Array.from({ length: width }, (_, to) => {
    const first = rate(0, to, undefined);
    return first ? [{ steps: [to], ...first }] : [];
  });
  for (let repeat = 1; repeat < repeats; repeat++) {
    const below = here;
    here = Array.from({ length: width }, (_, to) =>
      few(
        below.flatMap((paths, from) => {
          const more = rate(repeat, to, from);
          return more ? paths.map((path) => ({ steps: [...path.steps, to], ...sum(path, more) })) : [];
        }),
      ),
    );
  }
  return few(here.flat());
}

const sum = (one: Rated, more: Rated): Rated => ({
  cost: one.cost + more.cost,
  least: one.least.map((amount, index) => amount + more.least[index]!),
  exact: one.exact.map((amount, index) => amount + more.exact[index]!),
});
