import fc from "fast-check";
import { expect, test } from "vitest";
import { cheapestOfEach } from "../../../../src/fit/on-hand/cheapest-of-each.ts";

interface Item {
  readonly cost: number;
  readonly least: readonly number[];
  readonly exact: readonly number[];
}

const small = fc.integer({ min: 0, max: 5 });
const items = fc.array(
  fc.record({ cost: small, least: fc.tuple(small, small), exact: fc.tuple(fc.integer({ min: 0, max: 1 })) }),
  { maxLength: 40 },
);

/** Whether whatever can be taken with one can be taken with the other, at no more cost. */
const standsInFor = (other: Item, one: Item): boolean =>
  other.cost <= one.cost &&
  other.least.every((amount, index) => amount <= one.least[index]!) &&
  other.exact.join() === one.exact.join();

test("what is let go has as many to stand in for it as are wanted", () => {
  fc.assert(
    fc.property(items, fc.integer({ min: 1, max: 4 }), (all, keep) => {
      const kept = cheapestOfEach(all, keep, (item) => item);
      for (const item of all)
        if (!kept.includes(item))
          expect(kept.filter((other) => standsInFor(other, item)).length).toBeGreaterThanOrEqual(keep);
    }),
  );
});

test("what is kept has fewer than are wanted that are better in everything", () => {
  fc.assert(
    fc.property(items, fc.integer({ min: 1, max: 4 }), (all, keep) => {
      for (const item of cheapestOfEach(all, keep, (one) => one)) {
        const better = all.filter((other) => other.cost < item.cost && standsInFor(other, item));
        expect(better.length).toBeLessThan(keep);
      }
    }),
  );
});
