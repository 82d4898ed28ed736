import { describe, expect, it } from "vitest";
import { homeOf, keysOf, SECTIONS, type SectionName } from "../../../src/garment/keys.ts";
import { readGarment } from "../../../src/garment/read-garment.ts";
import { garmentText } from "../../support/garment-text.ts";

describe("the table of keys", () => {
  it("says of every key what it means and how it is written", () => {
    for (const name of Object.keys(SECTIONS) as SectionName[]) {
      expect(keysOf(name).length).toBeGreaterThan(0);
      for (const { means, form } of Object.values(SECTIONS[name].keys)) {
        expect(means).toMatch(/^[a-z].*[^.]$/);
        expect(form).not.toBe("");
      }
    }
  });

  it("knows where a key belongs, if that is plain", () => {
    expect(homeOf("outline")).toBe("a piece");
    expect(homeOf("tex")).toBe("a yarn");
    expect(homeOf("needles")).toBe("the bed or the cord's gauge");
    expect(homeOf("repeat")).toBeUndefined();
    expect(homeOf("toString")).toBeUndefined();
  });

  it.each(["format", "bed", "gauge", "pieces", "place"] as const)(
    "has no default for %s, which is missed",
    (key) => {
      expect(SECTIONS.garment.keys[key]).not.toHaveProperty("otherwise");
      const { diagnostics } = readGarment(garmentText({ yarn: "title: x", [key]: "" }), "x.yaml");
      expect(diagnostics[0]).toMatchObject({
        code: "missing-key",
        message: `the key ${key} is missing in a garment file`,
      });
    },
  );
});
