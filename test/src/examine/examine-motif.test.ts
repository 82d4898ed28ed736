import { describe, expect, test } from "vitest";
import { examine } from "../../../src/examine/examine.ts";
import { readGarment } from "../../../src/garment/read-garment.ts";
import { garmentText } from "../../support/garment-text.ts";

/** What is said of a motif of so many strands with two quantities of so many values. */
function told(strands: number, values: number): readonly string[] {
  const lines = Array.from({ length: strands }, (_, index) => {
    const needle = index % 2 === 0 ? 1 + index : -index;
    return `s${index}: { start: [${needle}, 0], repeat: [[${needle}, a]] }`;
  });
  const { garment } = readGarment(
    garmentText({
      motifs: `motifs:\n  net: { kind: cord, quantities: { a: { unit: rows, allow: 1..${values} }, b: { unit: rows, allow: 1..${values} } }, lead: 0, repeat: a, strands: { ${lines.join(", ")} } }`,
      place: "place:\n  - { motif: net, on: sleeve, from: rib top, to: underarm }",
    }),
    "test.yaml",
  );
  return examine(garment!)
    .filter(({ code }) => code === "too-many-looks")
    .map(({ message, expected }) => `${message}; ${expected}`);
}

describe("a motif that could look in more ways than can be tried", () => {
  test("is refused by its combinations", () => {
    expect(told(2, 141)).toEqual([]);
    expect(told(2, 142)).toEqual([
      "net could look in 20164 ways, more than can be tried; at most 20000: allow fewer values for some of a, b",
    ]);
  });

  test("is refused by its strands as well, which took minutes to work out", () => {
    expect(told(700, 2)).toEqual([]);
    expect(told(700, 141)).toEqual([
      "net could look in 19881 ways, more than can be tried; at most 71: allow fewer values for some of a, b",
    ]);
  });
});
