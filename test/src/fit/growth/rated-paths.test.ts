import fc from "fast-check";
import { expect, test } from "vitest";
import { ratedPaths } from "../../../../src/fit/growth/rated-paths.ts";
import type { Rated } from "../../../../src/fit/on-hand/cheapest-of-each.ts";

/** What beginning with each thing adds, and going on from one to another; some steps cannot be taken. */
const stairs = fc
  .record({ repeats: fc.integer({ min: 1, max: 3 }), width: fc.integer({ min: 1, max: 3 }) })
  .chain(({ repeats, width }) => {
    const step = fc.oneof(
      {
        weight: 4,
        arbitrary: fc.record({
          cost: fc.nat(6),
          least: fc.tuple(fc.nat(3), fc.nat(2)),
          exact: fc.tuple(fc.nat(1)),
        }),
      },
      { weight: 1, arbitrary: fc.constant(undefined) },
    );
    const count = repeats * width * width;
    return fc.record({
      repeats: fc.constant(repeats),
      width: fc.constant(width),
      steps: fc.array(step, { minLength: count, maxLength: count }),
    });
  });

type Way = Rated & { readonly steps: readonly number[] };

const noAmounts = { cost: 0, least: [0, 0], exact: [0] };

const sum = (ratings: readonly Rated[]): Rated =>
  ratings.reduce(
    (one, more) => ({
      cost: one.cost + more.cost,
      least: one.least.map((amount, at) => amount + more.least[at]!),
      exact: one.exact.map((amount, at) => amount + more.exact[at]!),
    }),
    noAmounts,
  );

type RateOf = (repeat: number, to: number, from: number | undefined) => Rated | undefined;

/** Every way through. */
function everyWay(repeats: number, width: number, rate: RateOf): readonly Way[] {
  let ways: readonly Way[] = [{ steps: [], ...noAmounts }];
  for (let repeat = 0; repeat < repeats; repeat++)
    ways = ways.flatMap(({ steps, ...before }) =>
      Array.from({ length: width }, (_, to) => {
        const more = rate(repeat, to, steps.at(-1));
        return more ? [{ steps: [...steps, to], ...sum([before, more]) }] : [];
      }).flat(),
    );
  return ways;
}

test("whatever the amounts have to come to, as many of the cheapest are found as trying every way finds", () => {
  fc.assert(
    fc.property(stairs, fc.integer({ min: 1, max: 3 }), ({ repeats, width, steps }, keep) => {
      const rate: RateOf = (repeat, to, from = 0) => steps[(repeat * width + to) * width + from];
      const found = ratedPaths({ repeats, width, rate }, keep);
      const all = everyWay(repeats, width, rate);
      const costsWithin = (ways: readonly Way[], { least, exact }: Rated): readonly number[] =>
        ways
          .filter((way) => way.exact.join() === exact.join())
          .filter((way) => way.least.every((amount, at) => amount <= least[at]!))
          .map(({ cost }) => cost)
          .sort((a, b) => a - b)
          .slice(0, keep);
      for (const bounds of all) expect(costsWithin(found, bounds)).toEqual(costsWithin(all, bounds));
      for (const { steps: path, ...rated } of found)
        expect(rated).toEqual(sum(path.map((to, repeat) => rate(repeat, to, path[repeat - 1])!)));
      expect(new Set(found.map((way) => way.steps.join())).size).toBe(found.length);
    }),
    { seed: 20261130, numRuns: 40 },
  );
});

test("what as many others stand in for is let go", () => {
  const rate: RateOf = (_, to) => ({ cost: to, least: [to], exact: [] });
  // Each of two repeats costs and takes 0 or 1: nothing is better than 0 twice.
  expect(ratedPaths({ repeats: 2, width: 2, rate }, 1)).toEqual([
    { steps: [0, 0], cost: 0, least: [0], exact: [] },
  ]);
});

test("there is none where no step can be taken", () => {
  expect(ratedPaths({ repeats: 2, width: 2, rate: () => undefined }, 3)).toEqual([]);
});
