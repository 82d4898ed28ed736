import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { checkOnHand, lastsFor } from "../../../../src/fit/check/check-on-hand.ts";
import type { Fit } from "../../../../src/fit/fit.ts";
import type { Garment, Supply } from "../../../../src/garment/garment.ts";
import {
  fitOf,
  lookWith,
  placed,
  section,
  straight,
  stretch,
  swing,
  written,
} from "./support/laid-by-hand.ts";

const supplyOf = (of: Supply["of"], amount: number): Supply => ({ of, amount, unit: "m", path: [] });

describe("the independent check of what is on hand", () => {
  let garment: Garment;
  let fit: Fit;
  const having = (...supplies: readonly Supply[]) =>
    checkOnHand({ ...garment, onHand: { supplies, leastWaste: false } }, fit);

  beforeAll(() => {
    garment = written({ cord: { ...swing, reserve: "0 %" } });
    const look = lookWith(garment.motifs[0]!, { interval: 3, spread: 2 }, [stretch(3, 3, 3)]);
    // 1 + 10 * 3 cord stitches of 5 mm: 155 mm; with the part of another repeat 170 mm.
    const part = { lastRow: 0, rows: 0, columns: [{ cord: 1 }] };
    fit = fitOf(garment, [placed([section(look, 5)], { part })], [straight(60, 10)]);
  });

  test("asks for nothing where nothing is said to be on hand", () => {
    expect(checkOnHand(garment, fit)).toEqual([]);
  });

  test("counts what is worked in part, and takes the last millimetre", () => {
    expect(having(supplyOf("cord", 0.17))).toEqual([]);
    expect(having(supplyOf("cord", 0.169))).toEqual([{ rule: "on hand: cord", found: "0.17 m of 0.169 m" }]);
  });

  test("holds each supply by itself", () => {
    const found = having(supplyOf("ground yarn", 1), supplyOf("cord", 1), supplyOf("cord yarn", 0.1));
    expect(found.map(({ rule }) => rule)).toEqual(["on hand: ground yarn", "on hand: cord yarn"]);
    expect(having(supplyOf("ground yarn", 100), supplyOf("cord yarn", 100))).toEqual([]);
  });
});

describe("whether a supply lasts", () => {
  test.each([
    // Cord is told in millimetres rounded up, yarn in tenths of a metre or a gram.
    ["cord", 4, 3.9991, true],
    ["cord", 4, 4.0001, false],
    ["cord", 3.9995, 3.9991, false],
    ["ground yarn", 4, 3.91, true],
    ["ground yarn", 3.95, 3.91, false],
    ["yarn", 4, 4.01, false],
  ] as const)("%s: %s on hand for %s", (of, amount, takes, lasts) => {
    expect(lastsFor(supplyOf(of, amount), takes)).toBe(lasts);
  });

  test("forgives what sums lose in their last digits, on either side", () => {
    expect(lastsFor(supplyOf("cord", 0.3), 0.1 + 0.2)).toBe(true);
    expect(lastsFor(supplyOf("cord", 1.1 * 3), 3.3)).toBe(true);
    expect(lastsFor(supplyOf("cord", 0.3 - 1e-10), 0.3)).toBe(true);
    expect(lastsFor(supplyOf("yarn", 5), Number.NaN)).toBe(false);
  });

  test("never tells more than there is", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("cord", "yarn"),
        fc.integer({ min: 1, max: 500 }),
        fc.integer({ min: 1, max: 500 }),
        (of, amount, takes) => {
          // Both in tenths of the step that it is told in.
          const scale = of === "cord" ? 10000 : 100;
          const told = 10 * Math.ceil(takes / 10);
          expect(lastsFor(supplyOf(of, amount / scale), takes / scale)).toBe(told <= amount);
        },
      ),
      { numRuns: 60 },
    );
  });
});
