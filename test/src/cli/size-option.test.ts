import { describe, expect, test } from "vitest";
import { needOneSize, sizeAsked } from "../../../src/cli/size-option.ts";
import { readGarment } from "../../../src/garment/read-garment.ts";
import { garmentText } from "../../support/garment-text.ts";

const { range } = readGarment(garmentText({ sizes: "sizes:\n  small:\n  medium:" }), "a.yaml");

describe("--size", () => {
  test("takes a size by its name", () => {
    expect(sizeAsked(range, { size: "medium" })?.garment).toBe(range!.sizes[1]!.garment);
    expect(sizeAsked(range, {})).toBeUndefined();
  });

  test("names the nearest size, or all of them where none is near", () => {
    expect(() => sizeAsked(range, { size: "smal" })).toThrow(
      'There is no size "smal". Did you mean --size "small"?',
    );
    expect(() => sizeAsked(range, { size: "42" })).toThrow("The sizes are small and medium.");
  });

  test("means nothing for a file without sizes", () => {
    expect(() => sizeAsked(undefined, { size: "small" })).toThrow("gives no sizes");
  });

  test("has to be given for a command about one size", () => {
    expect(() => needOneSize(range, undefined)).toThrow('such as --size "small"');
    expect(() => needOneSize(range, range!.sizes[0])).not.toThrow();
    expect(() => needOneSize(undefined, undefined)).not.toThrow();
  });
});
