import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { loopPoints } from "../../../../src/draw/scene/loops.ts";
import type { ClothPoint } from "../../../../src/draw/scene/place.ts";

const point = fc.record({
  xMm: fc.double({ min: -100, max: 100, noNaN: true }),
  yMm: fc.double({ min: 0, max: 400, noNaN: true }),
});

const lengthOf = (points: readonly ClothPoint[]): number =>
  points
    .slice(1)
    .reduce(
      (sum, { xMm, yMm }, index) => sum + Math.hypot(xMm - points[index]!.xMm, yMm - points[index]!.yMm),
      0,
    );

describe("a standing loop", () => {
  test("is drawn as long as its cord, whatever its ends", () => {
    fc.assert(
      fc.property(point, point, fc.double({ min: 1.01, max: 20, noNaN: true }), (from, to, times) => {
        const straight = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
        fc.pre(straight > 1);
        const points = [from, ...loopPoints(from, to, times * straight, 1), to];
        // Straight pieces of an arc are a little shorter than the arc: below 1 % for 24 of them.
        expect(lengthOf(points) / (times * straight)).toBeGreaterThan(0.99);
        expect(lengthOf(points) / (times * straight)).toBeLessThan(1.0001);
      }),
      { seed: 20261125, numRuns: 300 },
    );
  });

  test("stands off to the side that is asked for", () => {
    const [from, to] = [
      { xMm: 0, yMm: 0 },
      { xMm: 0, yMm: 6 },
    ];
    for (const { xMm } of loopPoints(from, to, 50, -1)) expect(xMm).toBeLessThan(0);
    for (const { xMm } of loopPoints(from, to, 50, 1)) expect(xMm).toBeGreaterThan(0);
  });

  test("is a straight line where the cord is no longer than the way", () => {
    expect(loopPoints({ xMm: 0, yMm: 0 }, { xMm: 3, yMm: 4 }, 5, 1)).toEqual([]);
  });
});
