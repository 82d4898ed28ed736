import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Amounts, isNoMore, leastOf, sumsOf } from "../../../../src/fit/refusal/amounts.ts";

const amounts = fc.array(fc.tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 4 })), {
  maxLength: 8,
});

test("each is added to each", () => {
  const some = [
    [1, 20],
    [3, 10],
  ];
  const others = [
    [5, 7],
    [0, 9],
  ];
  expect(sumsOf(some, others)).toEqual([
    [6, 27],
    [1, 29],
    [8, 17],
    [3, 19],
  ]);
  expect(sumsOf(some, [])).toEqual([]);
});

test.each<[Amounts, Amounts, boolean]>([
  [[2, 3], [2, 3], true],
  [[2, 3], [2, 4], true],
  [[2, 3], [3, 3], true],
  [[2, 3], [1, 9], false],
  [[2, 3], [9, 2], false],
  [[], [], true],
])("%j takes no more of anything than %j: %s", (one, other, expected) => {
  expect(isNoMore(one, other)).toBe(expected);
});

describe("of several ways", () => {
  test("those stay that no other surpasses, each once", () => {
    expect(
      leastOf([
        [5, 1],
        [4, 4],
        [3, 3],
        [3, 3],
        [1, 5],
        [2, 5],
        [5, 2],
      ]),
    ).toEqual([
      [5, 1],
      [3, 3],
      [1, 5],
    ]);
    expect(
      leastOf([
        [2, 2],
        [1, 1],
        [2, 2],
      ]),
    ).toEqual([[1, 1]]);
    expect(leastOf([])).toEqual([]);
  });

  test("there is among those that stay one that takes no more than each of them, and none twice", () => {
    fc.assert(
      fc.property(amounts, (ways) => {
        const least = leastOf(ways);
        for (const way of ways) expect(least.some((one) => isNoMore(one, way))).toBe(true);
        least.forEach((one, index) => {
          expect(ways).toContain(one);
          expect(least.findIndex((other) => isNoMore(other, one))).toBe(index);
        });
      }),
      { numRuns: 60 },
    );
  });
});
