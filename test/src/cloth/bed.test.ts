import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  bedSides,
  holdsNeedle,
  needleAt,
  needleCount,
  needleFrom,
  needleName,
  needlesAcross,
  needlesBetween,
  position,
  rangeName,
} from "../../../src/cloth/bed.ts";

const needle = fc.integer({ min: -120, max: 120 }).filter((value) => value !== 0);

describe("needles", () => {
  test("count outward from the centre and there is no needle 0", () => {
    expect([position(-1), position(1), needleAt(-0.5), needleAt(0.5)]).toEqual([-0.5, 0.5, -1, 1]);
    expect([needleName(-12), needleName(3)]).toEqual(["L12", "R3"]);
    expect(needlesAcross(-3, 3)).toBe(5);
    expect(needleFrom(0, -1)).toBe(-1);
    expect(needleFrom(1, -1)).toBe(1);
  });

  test("of a range are those between its boundaries", () => {
    expect(needlesBetween(-22, 22)).toEqual([-22, 22]);
    expect(needlesBetween(2, 5)).toEqual([3, 5]);
    expect(needleCount([-22, 22])).toBe(44);
    expect([rangeName([-2, 2]), rangeName([5, 5])]).toEqual(["L2 to R2", "R5"]);
    expect([holdsNeedle([-2, 2], -3), holdsNeedle([-2, 2], 2)]).toEqual([false, true]);
    expect(bedSides(115)).toEqual({ left: 57, right: 58 });
  });

  test("are held by a range from its first to its last", () => {
    const held = [-3, -2, -1, 1, 2, 3].filter((one) => holdsNeedle([-2, 2], one));
    expect(held).toEqual([-2, -1, 1, 2]);
    expect([4, 5, 6].filter((one) => holdsNeedle([5, 5], one))).toEqual([5]);
    expect([bedSides(4), bedSides(5)]).toEqual([
      { left: 2, right: 2 },
      { left: 2, right: 3 },
    ]);
  });

  test("come back from their positions", () => {
    fc.assert(
      fc.property(needle, (one) => {
        expect(needleAt(position(one))).toBe(one);
      }),
      { seed: 1 },
    );
  });
});
