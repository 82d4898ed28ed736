import fc from "fast-check";
import { expect, test } from "vitest";
import { cheapestPaths, type PathThrough } from "../../../../src/fit/growth/paths.ts";

/** Costs of beginning with each thing, and of going on from one to another; some steps cannot be taken. */
const stairs = fc
  .record({ repeats: fc.integer({ min: 1, max: 4 }), width: fc.integer({ min: 1, max: 3 }) })
  .chain(({ repeats, width }) => {
    const amount = fc.oneof(
      { weight: 4, arbitrary: fc.integer({ min: 0, max: 20 }) },
      { weight: 1, arbitrary: fc.constant(Number.POSITIVE_INFINITY) },
    );
    const steps = fc.array(amount, {
      minLength: repeats * width * width,
      maxLength: repeats * width * width,
    });
    return fc.record({ repeats: fc.constant(repeats), width: fc.constant(width), steps });
  });

function everyPath(
  repeats: number,
  width: number,
  cost: (repeat: number, to: number, from: number | undefined) => number,
): PathThrough[] {
  let paths: PathThrough[] = [{ steps: [], cost: 0 }];
  for (let repeat = 0; repeat < repeats; repeat++)
    paths = paths.flatMap((path) =>
      Array.from({ length: width }, (_, to) => ({
        steps: [...path.steps, to],
        cost: path.cost + cost(repeat, to, path.steps.at(-1)),
      })),
    );
  return paths.filter((path) => Number.isFinite(path.cost)).sort((a, b) => a.cost - b.cost);
}

test("the cheapest ways are those that trying every way finds, in rising order", () => {
  fc.assert(
    fc.property(stairs, fc.integer({ min: 1, max: 6 }), ({ repeats, width, steps }, keep) => {
      const cost = (repeat: number, to: number, from = 0): number =>
        steps[(repeat * width + to) * width + from]!;
      const found = cheapestPaths({ repeats, width, cost }, keep);
      const all = everyPath(repeats, width, cost);
      expect(found.map((path) => path.cost)).toEqual(all.slice(0, keep).map((path) => path.cost));
      expect(new Set(found.map((path) => path.steps.join())).size).toBe(found.length);
      for (const path of found)
        expect(all.find((one) => one.steps.join() === path.steps.join())?.cost).toBe(path.cost);
    }),
    { seed: 20261128, numRuns: 80 },
  );
});

test("there is none where no step can be taken", () => {
  expect(cheapestPaths({ repeats: 2, width: 2, cost: () => Number.POSITIVE_INFINITY }, 3)).toEqual([]);
});
