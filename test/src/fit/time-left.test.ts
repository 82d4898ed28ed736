import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { timeLeft } from "../../../src/fit/time-left.ts";

beforeEach(() => vi.useFakeTimers({ toFake: ["performance"] }));
afterEach(() => vi.useRealTimers());

test("what is left shrinks as time goes by, and is never nothing", () => {
  const left = timeLeft(100);
  expect(left()).toEqual({ timeLimitMs: 100 });
  vi.advanceTimersByTime(60);
  expect(left()).toEqual({ timeLimitMs: 40 });
  vi.advanceTimersByTime(1000);
  expect(left()).toEqual({ timeLimitMs: 1 });
});

test("without a limit none is left to keep", () => {
  expect(timeLeft(undefined)()).toEqual({});
});
