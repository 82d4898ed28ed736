import { describe, expect, test } from "vitest";
import { SIZES } from "../../../src/sizes/body.ts";

const lengthOf = (size: string, measure: "chest" | "cross back" | "upper arm") =>
  SIZES.get(size)?.lengths.get(measure);

describe("a size", () => {
  test("is named by whose it is and by its column", () => {
    expect([...SIZES.keys()].slice(0, 2)).toEqual(["baby 3 months", "baby 6 months"]);
    expect(SIZES.get("woman M")).toMatchObject({
      name: "woman M",
      source: expect.stringContaining("Council"),
    });
  });

  test("has printed centimetres before inches, and the middle of a range", () => {
    // 41.5 in would be 1054.1 mm.
    expect(lengthOf("woman L", "chest")).toEqual({ mm: 1040, leastMm: 1015, mostMm: 1065 });
    expect(lengthOf("man S", "cross back")?.mm).toBeCloseTo(15.75 * 25.4, 9);
  });

  test("says which values were not seen in print, and has none where none is known", () => {
    expect(lengthOf("woman 3X", "chest")?.uncertain).toMatch(/from memory/);
    expect(lengthOf("woman M", "chest")?.uncertain).toBeUndefined();
    expect(lengthOf("woman 3X", "upper arm")).toBeUndefined();
  });
});
