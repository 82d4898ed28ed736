import fc from "fast-check";
import { expect, test } from "vitest";
import { spreadApart } from "../../../../src/draw/svg/spread.ts";

const limits = { least: 0, most: 1000 };
const at = (places: readonly number[]) => places.map((one) => ({ at: one }));

test("labels with room stay where they want to be", () => {
  expect(spreadApart(at([10, 30, 60]), 10, limits)).toEqual([10, 30, 60]);
});

test("labels that touch move apart about their middle", () => {
  expect(spreadApart(at([100, 100, 100]), 10, limits)).toEqual([90, 100, 110]);
});

test("a moved block takes along the ones it pushes into", () => {
  expect(spreadApart(at([92, 100, 100, 100]), 10, limits)).toEqual([83, 93, 103, 113]);
});

test("no label leaves its limits", () => {
  expect(spreadApart(at([0, 1, 2]), 10, limits)).toEqual([0, 10, 20]);
  expect(spreadApart(at([999, 1000]), 10, limits)).toEqual([990, 1000]);
});

test("any labels come out in order, apart, and inside where there is room for all", () => {
  const wanted = fc.array(fc.double({ min: 0, max: 1000, noNaN: true }), { maxLength: 60 });
  fc.assert(
    fc.property(wanted, (places) => {
      const sorted = [...places].sort((one, other) => one - other);
      const spread = spreadApart(at(sorted), 10, limits);
      expect(spread).toHaveLength(sorted.length);
      spread.forEach((place, index) => {
        expect(place).toBeGreaterThanOrEqual(-1e-6);
        expect(place).toBeLessThanOrEqual(1000 + 1e-6);
        if (index > 0) expect(place - spread[index - 1]!).toBeGreaterThanOrEqual(10 - 1e-6);
      });
    }),
    { seed: 411, numRuns: 300 },
  );
});
