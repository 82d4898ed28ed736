import { expect, test } from "vitest";
import { timeLeft } from "../../../src/fit/time-left.ts";
import { withClock } from "../../support/own-clock.ts";

test("what is left shrinks as time goes by, and is never nothing", () => {
  withClock(0, (moveOn) => {
    moveOn(1000);
    const left = timeLeft(100);
    expect(left()).toEqual({ timeLimitMs: 100 });
    moveOn(60);
    expect(left()).toEqual({ timeLimitMs: 40 });
    moveOn(1000);
    expect(left()).toEqual({ timeLimitMs: 1 });
  });
});

test("without a limit none is left to keep", () => {
  expect(timeLeft(undefined)()).toStrictEqual({});
});
