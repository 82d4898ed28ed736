import { expect, test } from "vitest";
import { breach, describeBreaches } from "../../../../src/fit/check/breach.ts";

test("breaches are told one after the other, each with its rule", () => {
  expect(describeBreaches([breach("sleeve", "is missing"), breach("cost", "2 by one, 3 by the other")])).toBe(
    "sleeve: is missing; cost: 2 by one, 3 by the other",
  );
});
