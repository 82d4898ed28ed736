import { expect, test } from "vitest";
import { readSum, sumName } from "../../../src/shape/sums.ts";

const known = new Set(["upper_arm", "ease"]);

test("a measurement's name is one word in a sum", () => {
  expect(sumName("armhole bind-off")).toBe("armhole_bind_off");
});

test("a sum tells each name it uses once, and its value", () => {
  const sum = readSum("max(0, -ease) + 3 / 5 * (upper_arm + upper_arm)", known);
  expect(new Set(sum.names)).toEqual(new Set(["ease", "upper_arm"]));
  expect(sum.names).toHaveLength(2);
  expect(
    sum.value(
      new Map([
        ["ease", -4],
        ["upper_arm", 10],
      ]),
    ),
  ).toBe(16);
});

test("a sum that divides by nothing has no value", () => {
  expect(readSum("1 / ease", known).value(new Map([["ease", 0]]))).toBeUndefined();
});

test("a sum with a name that nobody knows is a fault of the program", () => {
  expect(() => readSum("uper_arm + 1", known)).toThrow(/uper_arm/);
});
