import { describe, expect, it } from "vitest";
import { LONGEST_EXPRESSION, parseArithmetic } from "../../../src/arithmetic/parse-arithmetic.ts";
import type { ExpressionNode } from "../../../src/arithmetic/tree.ts";

const NAMES = new Set(["interval", "spread"]);

const number = (value: number): ExpressionNode => ({ kind: "number", value });
const quantity = (name: string): ExpressionNode => ({ kind: "quantity", name });

describe("what is arithmetic", () => {
  it.each<[string, ExpressionNode]>([
    ["12", number(12)],
    ["1.5", number(1.5)],
    [".5", number(0.5)],
    ["  7  ", number(7)],
    ["(((3)))", number(3)],
    ["+spread", quantity("spread")],
    ["-spread", { kind: "negate", of: quantity("spread") }],
    ["- -spread", { kind: "negate", of: { kind: "negate", of: quantity("spread") } }],
    ["2 * interval", { kind: "binary", operator: "*", left: number(2), right: quantity("interval") }],
    [
      "1 - 2 - 3",
      {
        kind: "binary",
        operator: "-",
        left: { kind: "binary", operator: "-", left: number(1), right: number(2) },
        right: number(3),
      },
    ],
    [
      "1 + 2 / 3",
      {
        kind: "binary",
        operator: "+",
        left: number(1),
        right: { kind: "binary", operator: "/", left: number(2), right: number(3) },
      },
    ],
    [
      "2 * -spread",
      { kind: "binary", operator: "*", left: number(2), right: { kind: "negate", of: quantity("spread") } },
    ],
    ["min(1, spread, 3)", { kind: "call", name: "min", args: [number(1), quantity("spread"), number(3)] }],
    ["mod(interval, 2)", { kind: "call", name: "mod", args: [quantity("interval"), number(2)] }],
    [
      "abs(floor(1.5))",
      { kind: "call", name: "abs", args: [{ kind: "call", name: "floor", args: [number(1.5)] }] },
    ],
  ])("%s", (text, tree) => {
    expect(parseArithmetic(text, NAMES)).toEqual({ tree });
  });

  it("takes a sum of the greatest length, with every operation inside the one before", () => {
    const text = `1${"+1".repeat((LONGEST_EXPRESSION - 1) / 2)}`;
    expect(parseArithmetic(text, NAMES)).toHaveProperty("tree");
    expect(parseArithmetic(`${"-".repeat(LONGEST_EXPRESSION - 1)}1`, NAMES)).toHaveProperty("tree");
  });

  it("takes a quantity whose name the language itself knows by another meaning", () => {
    for (const name of ["i", "e", "pi", "cm", "constructor", "__proto__", "sqrt"]) {
      expect(parseArithmetic(name, new Set([name]))).toEqual({ tree: quantity(name) });
    }
  });
});

describe("what is not arithmetic is refused with its place", () => {
  it.each<[text: string, code: string, offset: number, found: string]>([
    ["", "expression-empty", 0, ""],
    ["   ", "expression-empty", 0, "   "],
    ["constructor", "expression-unknown-name", 0, "constructor"],
    ["__proto__", "expression-unknown-name", 0, "__proto__"],
    ["toString()", "expression-unknown-name", 0, "toString"],
    ["cos.constructor", "expression-not-arithmetic", 3, "."],
    ["spread.constructor", "expression-not-arithmetic", 6, "."],
    ['cos.constructor("return process")()', "expression-not-arithmetic", 3, "."],
    ["import", "expression-unknown-name", 0, "import"],
    ["import({a: 1})", "expression-not-arithmetic", 7, "{"],
    ["createUnit", "expression-unknown-name", 0, "createUnit"],
    ["evaluate", "expression-unknown-name", 0, "evaluate"],
    ["parse(1)", "expression-unknown-name", 0, "parse"],
    ["simplify(1)", "expression-unknown-name", 0, "simplify"],
    ["derivative(1)", "expression-unknown-name", 0, "derivative"],
    ["reviver(1)", "expression-unknown-name", 0, "reviver"],
    ["spread=1", "expression-not-arithmetic", 6, "="],
    ["[1][1]", "expression-not-arithmetic", 0, "["],
    ["{a: 1}", "expression-not-arithmetic", 0, "{"],
    ['"a"', "expression-not-arithmetic", 0, '"'],
    ["'a'", "expression-not-arithmetic", 0, "'"],
    ["f(x)=x", "expression-not-arithmetic", 4, "="],
    ["ones(10, 10)", "expression-unknown-name", 0, "ones"],
    ["ones(1e4,1e4)", "expression-not-arithmetic", 5, "1e4"],
    ["2 cm", "expression-unknown-name", 2, "cm"],
    ["a.b", "expression-not-arithmetic", 1, "."],
    ["1;2", "expression-not-arithmetic", 1, ";"],
    ["1\n2", "expression-not-arithmetic", 1, "\n"],
    ["spread?1:2", "expression-not-arithmetic", 6, "?"],
    ["!spread", "expression-not-arithmetic", 0, "!"],
    ["5!", "expression-not-arithmetic", 1, "!"],
    ["1:5", "expression-not-arithmetic", 1, ":"],
    ["1 # 2", "expression-not-arithmetic", 2, "#"],
    ["i", "expression-unknown-name", 0, "i"],
    ["pi", "expression-unknown-name", 0, "pi"],
    ["true", "expression-unknown-name", 0, "true"],
    ["null", "expression-unknown-name", 0, "null"],
    ["NaN", "expression-unknown-name", 0, "NaN"],
    ["Infinity", "expression-unknown-name", 0, "Infinity"],
    ["end", "expression-unknown-name", 0, "end"],
    ["not spread", "expression-unknown-name", 0, "not"],
    ["spread and 1", "expression-unknown-name", 7, "and"],
    ["spread to interval", "expression-unknown-name", 7, "to"],
    ["spread in interval", "expression-unknown-name", 7, "in"],
    ["spread mod 2", "expression-not-arithmetic", 7, "mod"],
    ["spread % 2", "expression-not-arithmetic", 7, "%"],
    ["spread ^ 2", "expression-not-arithmetic", 7, "^"],
    ["spread'", "expression-not-arithmetic", 6, "'"],
    ["spread == 2", "expression-not-arithmetic", 7, "="],
    ["spread > 2", "expression-not-arithmetic", 7, ">"],
    ["spread | 2", "expression-not-arithmetic", 7, "|"],
    ["spread\u00a0+ 2", "expression-not-arithmetic", 6, "\u00a0"],
    ["\u0661", "expression-not-arithmetic", 0, "\u0661"],
    ["2 \u{1F9F6}", "expression-not-arithmetic", 2, "\u{1F9F6}"],
    ["0x10", "expression-not-arithmetic", 0, "0x10"],
    ["0b11", "expression-not-arithmetic", 0, "0b11"],
    ["2 + 1e308", "expression-not-arithmetic", 4, "1e308"],
    ["1e-3", "expression-not-arithmetic", 0, "1e-3"],
    ["1..2", "expression-not-arithmetic", 1, "."],
    ["5.", "expression-not-arithmetic", 1, "."],
    ["2 spread", "expression-not-arithmetic", 2, "spread"],
    ["2spread", "expression-not-arithmetic", 1, "spread"],
    ["2(3)", "expression-not-arithmetic", 1, "("],
    ["(2)(3)", "expression-not-arithmetic", 3, "("],
    ["(2)3", "expression-not-arithmetic", 3, "3"],
    ["spread(2)", "expression-not-arithmetic", 6, "("],
    ["1 2", "expression-not-arithmetic", 2, "2"],
    ["*2", "expression-not-arithmetic", 0, "*"],
    ["2 *", "expression-not-arithmetic", 2, "*"],
    ["2 * / 3", "expression-not-arithmetic", 4, "/"],
    ["(2", "expression-not-arithmetic", 0, "("],
    ["2)", "expression-not-arithmetic", 1, ")"],
    ["()", "expression-not-arithmetic", 1, ")"],
    ["(1, 2)", "expression-not-arithmetic", 2, ","],
    ["1,5", "expression-not-arithmetic", 1, ","],
    ["min", "expression-not-arithmetic", 0, "min"],
    ["min()", "expression-not-arithmetic", 4, ")"],
    ["min(1,)", "expression-not-arithmetic", 6, ")"],
    ["min(,1)", "expression-not-arithmetic", 4, ","],
    ["mod(1)", "expression-wrong-count", 0, "mod"],
    ["mod(1, 2, 3)", "expression-wrong-count", 0, "mod"],
    ["1 + floor(1, 2)", "expression-wrong-count", 4, "floor"],
    ["abs(max(1, (2 + 3)), 4)", "expression-wrong-count", 0, "abs"],
    [`${"(".repeat(41)}1${")".repeat(41)}`, "expression-too-deep", 40, "("],
  ])("%s", (text, code, offset, found) => {
    const parsed = parseArithmetic(text, NAMES);
    expect(parsed).toMatchObject({ problem: { code, offset, found } });
  });

  it("refuses a text that is too long before looking into it", () => {
    const text = "1".repeat(LONGEST_EXPRESSION + 1);
    expect(parseArithmetic(text, NAMES)).toMatchObject({
      problem: { code: "expression-too-long", offset: 0 },
    });
  });

  it("names the quantities that are there when one is not", () => {
    expect(parseArithmetic("2 * intervall", NAMES)).toEqual({
      problem: {
        code: "expression-unknown-name",
        offset: 4,
        found: "intervall",
        message: 'there is no quantity or function called "intervall" here',
        expected: "interval, spread",
      },
    });
  });
});
