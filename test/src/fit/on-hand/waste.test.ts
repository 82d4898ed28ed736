import { expect, test } from "vitest";
import { wasteTerms } from "../../../../src/fit/on-hand/waste.ts";
import type { OnHand, Supply } from "../../../../src/garment/garment.ts";
import { plaitedFit } from "../../../support/plaited-fit.ts";

const cord = (amount: number): Supply => ({ path: [], of: "cord", amount, unit: "m" });

const onHand = (...supplies: readonly Supply[]): OnHand => ({ supplies, leastWaste: true });

// Two repeats of the plait take 132 cord stitches of 2.5 mm, 0.33 m.
test("what is left over of a supply costs by the percent where as little as can be is to be left", () => {
  const terms = wasteTerms(plaitedFit(onHand(cord(1.1)), [{}]));
  // 0.77 m of 1.1 m are 70 %, at 0.1 each.
  expect(terms).toMatchObject([{ term: "waste", unit: "% left over", weight: 0.1, supply: "cord" }]);
  expect(terms[0]!.amount).toBeCloseTo(70, 9);
  expect(terms[0]!.cost).toBeCloseTo(7, 9);
});

test("what is used up to the end costs nothing", () => {
  expect(wasteTerms(plaitedFit(onHand(cord(0.33)), [{}]))).toEqual([]);
  expect(wasteTerms(plaitedFit(onHand(cord(0.66)), [{}, {}]))).toEqual([]);
});

test("each supply costs by itself", () => {
  const terms = wasteTerms(plaitedFit(onHand(cord(0.66), cord(0.33), cord(1.1)), [{}]));
  expect(terms.map(({ amount }) => Math.round(amount))).toEqual([50, 70]);
});

test("nothing is waste where nothing is said to be on hand, or some may be left", () => {
  expect(wasteTerms(plaitedFit(undefined, [{}]))).toEqual([]);
  expect(wasteTerms(plaitedFit({ ...onHand(cord(1.1)), leastWaste: false }, [{}]))).toEqual([]);
});
