import { describe, expect, it } from "vitest";
import { endedEarly, endedWithout } from "../../../../src/cli/progress/ending-words.ts";
import type { Fit } from "../../../../src/fit/fit.ts";

const fitAt = (cost: number): Fit => ({ cost }) as Fit;

describe("a fit whose search was ended early", () => {
  it("is told with how much better the best may be", () => {
    const result = { fit: fitAt(12.5), proven: false, bound: 11.25, rivalsProven: false };
    expect(endedEarly(result, "knitter", 60_000)).toEqual([
      "Stopped by you; this is the best so far. It may be improved by at most 1.250.",
    ]);
    expect(endedEarly(result, "time limit", 1500)).toEqual([
      "Stopped at the time limit of 1.5 s; this is the best so far. It may be improved by at most 1.250.",
    ]);
  });

  it("is told so where no bound is known", () => {
    const result = { fit: fitAt(12.5), proven: false, bound: Number.NEGATIVE_INFINITY };
    expect(endedEarly(result, "knitter", 60_000)).toEqual([
      "Stopped by you; this is the best so far. How much it may be improved is not known.",
    ]);
  });

  it("is told of as proven where only the next best were cut short", () => {
    const result = { fit: fitAt(12.5), proven: true, bound: 12.5, rivalsProven: false };
    expect(endedEarly(result, "knitter", 60_000)).toEqual([
      "Stopped by you; the best fit is proven, but not all of the next best were found or proven.",
    ]);
    expect(endedEarly({ ...result, rivalsProven: true }, "knitter", 60_000)).toEqual([]);
  });
});

describe("a search that ended without a fit", () => {
  it("says who ended it, and how to give it more time", () => {
    expect(endedWithout("knitter", 60_000)).toBe("Stopped by you before a fit was found.");
    expect(endedWithout("time limit", 60_000)).toBe(
      "Stopped at the time limit of 60 s before a fit was found. A longer one: --time-limit SECONDS",
    );
  });
});
