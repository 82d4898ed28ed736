import { describe, expect, it } from "vitest";
import { nearest } from "../../../src/diagnostics/nearest.ts";

const KNOWN = ["format", "title", "bed", "gauge", "lead-in", "interval", "width", "repeat"];

describe("nearest", () => {
  it.each([
    ["intervall", "interval"],
    ["widht", "width"],
    ["titel", "title"],
    ["deb", "bed"],
    ["Bed", "bed"],
    ["LEAD_IN", "lead-in"],
    ["lead in", "lead-in"],
    ["leadin", "lead-in"],
    ["gague", "gauge"],
    ["repeats", "repeat"],
  ])("%s was meant to be %s", (name, meant) => {
    expect(nearest(name, KNOWN)).toBe(meant);
  });

  it.each(["colour", "x", "", "__proto__", "constructor", "a".repeat(10_000)])(
    "%s is near to none",
    (name) => {
      expect(nearest(name, KNOWN)).toBeUndefined();
    },
  );

  it("prefers the nearer of two", () => {
    expect(nearest("heigth", ["width", "height"])).toBe("height");
    expect(nearest("spread", [])).toBeUndefined();
  });
});
