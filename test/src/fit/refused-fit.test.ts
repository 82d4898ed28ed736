import { expect, test } from "vitest";
import { RefusedFit } from "../../../src/fit/refused-fit.ts";

test("a refused fit is an error of its own, told by its name", () => {
  expect(new RefusedFit("the rows do not add up")).toMatchObject({
    name: "RefusedFit",
    message: "the rows do not add up",
  });
  expect(new RefusedFit("")).toBeInstanceOf(Error);
});
