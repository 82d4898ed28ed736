import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MM_PER_UNIT, parseLength } from "../../../src/units/length.ts";

describe("parseLength", () => {
  it.each<[string, number]>([
    ["20 cm", 200],
    ["20cm", 200],
    ["  20   cm  ", 200],
    ["6.5 mm", 6.5],
    [".5 cm", 5],
    ["1.2 m", 1200],
    ["1/2 in", 12.7],
    ["3 in", 76.2],
    ["(1 + 1/2) in", 38.1],
    ["(20 + 2 * 3) cm", 260],
    ["2 * 10 cm", 200],
    ["0 cm", 0],
    ["-2 cm", -20],
    ["(1) / (4) in", 6.35],
  ])("%s is %d mm", (text, mm) => {
    expect(parseLength(text)).toEqual({ mm });
  });

  it.each<[text: string, code: string, expected: string]>([
    ["20", "missing-unit", "20 cm, or another of mm, cm, m or in"],
    ["1,5", "missing-unit", "1.5 cm, or another of mm, cm, m or in"],
    ["1,5 cm", "decimal-comma", "1.5 cm"],
    ["5 Cm", "unknown-unit", "5 cm"],
    ["5 CM", "unknown-unit", "5 cm"],
    ['5"', "unknown-unit", "5 in"],
    ["5\u2033", "unknown-unit", "5 in"],
    ["5 ''", "unknown-unit", "5 in"],
    ["2 inches", "unknown-unit", "2 in"],
    ["3 centimetres", "unknown-unit", "3 cm"],
    ["5 ells", "unknown-unit", "one of mm, cm, m or in"],
    ["1 1/2 in", "not-a-length", "(1 + 1/2) in"],
    ["20 + 5 cm", "not-a-length", "(20 + 5) cm"],
    ["20 cm + 5 mm", "not-a-length", "a length such as 20 mm"],
    ["20 cm cm", "not-a-length", "a length such as 20 cm"],
    ["1/0 cm", "not-a-length", "a length such as 20 cm"],
    ["1e308 cm", "not-a-length", "a length such as 20 cm"],
    ["0x10 cm", "not-a-length", "a length such as 20 cm"],
    ["NaN cm", "not-a-length", "a length such as 20 cm"],
    ["Infinity cm", "not-a-length", "a length such as 20 cm"],
    ["cm", "not-a-length", "a length such as 20 cm"],
    ["wide", "not-a-length", "a length such as 20 cm"],
    ["", "not-a-length", "a length such as 20 cm"],
    ["constructor", "not-a-length", "a length such as 20 cm"],
    ["5 __proto__", "not-a-length", "a length such as 20 cm"],
    ["5 toString", "unknown-unit", "one of mm, cm, m or in"],
    [`${"1".repeat(60)} cm`, "not-a-length", "a length such as 20 cm"],
    ["5 cm; 6 cm", "not-a-length", "a length such as 20 cm"],
  ])("%s is refused", (text, code, expected) => {
    expect(parseLength(text)).toMatchObject({ problem: { code, expected } });
  });

  it("gives back every length that it is given, in every unit, to a millionth of a millimetre", () => {
    const unit = fc.constantFrom(...(["mm", "cm", "m", "in"] as const));
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 9_999_999 }),
        fc.integer({ min: 0, max: 3 }),
        unit,
        (digits, places, of) => {
          const amount = (digits / 10 ** places).toFixed(places);
          const read = parseLength(`${amount} ${of}`);
          expect("mm" in read && Math.abs(read.mm - Number(amount) * MM_PER_UNIT[of])).toBeLessThan(1e-6);
        },
      ),
      { seed: 7 },
    );
  });

  it("never throws", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const read = parseLength(text);
        return "mm" in read ? Number.isFinite(read.mm) : read.problem.message.length > 0;
      }),
      { seed: 7, numRuns: 2000 },
    );
  });
});
