import { expect, test } from "vitest";
import { timeLimitOf } from "../../../src/cli/solving.ts";

test("the time limit is told in seconds, as a plain number", () => {
  expect(timeLimitOf({ "time-limit": "2" })).toBe(2000);
  expect(() => timeLimitOf({ "time-limit": "2s" })).toThrow("a number of seconds such as 2,");
  expect(() => timeLimitOf({ "time-limit": "0" })).toThrow("from 0.01 to 86400");
});
