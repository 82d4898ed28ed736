import { describe, expect, test } from "vitest";
import type { Wearer } from "../../../src/garment/garment.ts";
import { wearerGroup } from "../../../src/safety/wearer-group.ts";

const wearer = (said: Omit<Wearer, "path">): Wearer => ({ path: ["wearer"], ...said });

describe("whom a wearer is taken for", () => {
  test.each<[Omit<Wearer, "path">, string]>([
    [{ ageYears: 5 }, "young"],
    [{ ageYears: 1.5 }, "young"],
    [{ ageYears: 7 }, "young"],
    [{ ageYears: 8 }, "older"],
    [{ ageYears: 14 }, "older"],
    [{ ageYears: 15 }, "grown"],
    [{ heightMm: 1820 }, "older"],
    [{ heightMm: 1830 }, "grown"],
    // Where the two disagree the stricter holds.
    [{ ageYears: 9, heightMm: 1300 }, "young"],
    [{ ageYears: 6, heightMm: 1400 }, "young"],
    [{ ageYears: 12, heightMm: 1850 }, "older"],
    // A grown person may be small.
    [{ ageYears: 40, heightMm: 1340 }, "grown"],
    [{}, "not said"],
  ])("%j is %s", (said, group) => {
    expect(wearerGroup(wearer(said))).toBe(group);
  });

  test("nothing is not said", () => {
    expect(wearerGroup(undefined)).toBe("not said");
  });
});
