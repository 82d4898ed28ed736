import fc from "fast-check";
import { expect, test } from "vitest";
import { type Amounts, unsurpassedPaths } from "../../../../src/fit/growth/unsurpassed-paths.ts";

/** What beginning with each thing adds, and going on from one to another; some steps cannot be taken. */
const stairs = fc
  .record({ repeats: fc.integer({ min: 1, max: 4 }), width: fc.integer({ min: 1, max: 3 }) })
  .chain(({ repeats, width }) => {
    const step = fc.oneof(
      { weight: 4, arbitrary: fc.tuple(fc.nat(6), fc.nat(6)) },
      { weight: 1, arbitrary: fc.constant(undefined) },
    );
    const count = repeats * width * width;
    return fc.record({
      repeats: fc.constant(repeats),
      width: fc.constant(width),
      steps: fc.array(step, { minLength: count, maxLength: count }),
    });
  });

/** By trying every way through. */
function tried(
  repeats: number,
  width: number,
  amounts: (repeat: number, to: number, from: number | undefined) => Amounts | undefined,
): readonly string[] {
  let all: { readonly last?: number; readonly sums: Amounts }[] = [{ sums: [0, 0] }];
  for (let repeat = 0; repeat < repeats; repeat++)
    all = all.flatMap(({ last, sums }) =>
      Array.from({ length: width }, (_, to) => {
        const more = amounts(repeat, to, last);
        return more ? [{ last: to, sums: [sums[0] + more[0], sums[1] + more[1]] as const }] : [];
      }).flat(),
    );
  const unsurpassed = all.filter(
    ({ sums: [one, other] }) =>
      !all.some(({ sums: [a, b] }) => a <= one && b <= other && (a < one || b < other)),
  );
  return [...new Set(unsurpassed.map(({ sums }) => sums.join()))].sort();
}

test("the ways that nothing surpasses are those that trying every way finds", () => {
  fc.assert(
    fc.property(stairs, ({ repeats, width, steps }) => {
      const amounts = (repeat: number, to: number, from = 0): Amounts | undefined =>
        steps[(repeat * width + to) * width + from];
      const found = unsurpassedPaths({ repeats, width, amounts });
      expect(found.map((path) => path.amounts.join()).sort()).toEqual(tried(repeats, width, amounts));
      for (const path of found) {
        const added = path.steps.map((to, repeat) => amounts(repeat, to, path.steps[repeat - 1])!);
        expect(path.amounts).toEqual([0, 1].map((at) => added.reduce((sum, one) => sum + one[at]!, 0)));
      }
    }),
    { seed: 20261129, numRuns: 80 },
  );
});
