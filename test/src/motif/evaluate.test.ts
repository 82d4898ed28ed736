import fc from "fast-check";
import { all, create } from "mathjs/number";
import { describe, expect, it } from "vitest";
import type { ExpressionNode } from "../../../src/arithmetic/tree.ts";
import { evaluate } from "../../../src/motif/evaluate.ts";
import { parseExpression } from "../../../src/motif/parse-expression.ts";

const NAMES = new Set(["interval", "spread"]);

function value(source: string | number, values: Record<string, number> = {}): unknown {
  const parsed = parseExpression(source, NAMES, ["lead"]);
  if ("problem" in parsed) throw new Error(parsed.problem.message);
  return evaluate(parsed.expression, values);
}

describe("evaluate", () => {
  it.each<[string | number, number]>([
    [4, 4],
    ["2 * interval", 8],
    ["-spread", -3],
    ["interval - spread - 1", 0],
    ["interval / spread * 3", 4],
    ["min(interval, spread)", 3],
    ["max(interval, spread, 9)", 9],
    ["abs(spread - interval)", 1],
    ["floor(-1.5)", -2],
    ["ceil(-1.5)", -1],
    ["round(2.5)", 3],
    ["round(-2.5)", -3],
    ["round(2.4)", 2],
    ["mod(7, 3)", 1],
    ["needle(2)", 2],
    ["needle(0)", -1],
    ["needle(-2)", -3],
    ["needle(spread - 4)", -2],
    ["mod(-1, 3)", 2],
    ["mod(7, -3)", -2],
    ["ceil(0.1 * 30)", 3],
    ["floor(0.29 * 100)", 29],
  ])("%s with interval 4 and spread 3", (source, expected) => {
    expect(value(source, { interval: 4, spread: 3 })).toBe(expected);
  });

  it("takes its values from a map as well", () => {
    const parsed = parseExpression("interval + spread", NAMES, []);
    if ("problem" in parsed) throw new Error(parsed.problem.message);
    const values = new Map([
      ["interval", 4],
      ["spread", 3],
    ]);
    expect(evaluate(parsed.expression, values)).toBe(7);
  });

  it("never gives -0", () => {
    expect(Object.is(value("-spread", { spread: 0 }), 0)).toBe(true);
    expect(Object.is(value("round(-0.2)"), 0)).toBe(true);
    expect(Object.is(value("ceil(-0.2)"), 0)).toBe(true);
  });

  it.each([
    ["1 / (spread - 3)", "division-by-zero"],
    ["mod(1, spread - 3)", "division-by-zero"],
    ["1 + 2 * min(4, 1 / (spread - 3))", "division-by-zero"],
    [`${"9".repeat(180)} * ${"9".repeat(10)}`, undefined],
    ["interval", "unknown-quantity"],
    ["-interval + 1", "unknown-quantity"],
  ])("%s is a number or a problem, never an exception", (source, reason) => {
    const result = value(source, { spread: 3 });
    if (reason === undefined) expect(result).toBeTypeOf("number");
    else expect(result).toMatchObject({ reason, problem: expect.any(String) });
  });

  it("calls a result too large a problem", () => {
    expect(value("spread * spread", { spread: 1e200 })).toMatchObject({ reason: "not-finite" });
    expect(value("spread", { spread: Number.NaN })).toMatchObject({ reason: "not-finite" });
  });

  it("does not take an inherited property for a value", () => {
    const parsed = parseExpression("toString", new Set(["toString"]), []);
    if ("problem" in parsed) throw new Error(parsed.problem.message);
    expect(evaluate(parsed.expression, {})).toMatchObject({ reason: "unknown-quantity" });
  });
});

// The reference: the evaluator that comes with the parser we use.
const reference = create(all ?? {});

const leaf: fc.Arbitrary<ExpressionNode> = fc.oneof(
  fc
    .integer({ min: 0, max: 400 })
    .map((quarters): ExpressionNode => ({ kind: "number", value: quarters / 4 })),
  fc.constantFrom("interval", "spread").map((name): ExpressionNode => ({ kind: "quantity", name })),
);

const { tree } = fc.letrec<{ tree: ExpressionNode }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 5 },
    leaf,
    tie("tree").map((of): ExpressionNode => ({ kind: "negate", of })),
    fc
      .tuple(fc.constantFrom("+", "-", "*", "/"), tie("tree"), tie("tree"))
      .map(([operator, left, right]): ExpressionNode => ({ kind: "binary", operator, left, right })),
    fc
      .tuple(fc.constantFrom("floor", "ceil", "round", "abs"), tie("tree"))
      .map(([name, of]): ExpressionNode => ({ kind: "call", name, args: [of] })),
    fc
      .tuple(fc.constantFrom("min", "max", "mod"), tie("tree"), tie("tree"))
      .map(([name, left, right]): ExpressionNode => ({ kind: "call", name, args: [left, right] })),
  ),
}));

function written(node: ExpressionNode): string {
  switch (node.kind) {
    case "number":
      return String(node.value);
    case "quantity":
      return node.name;
    case "negate":
      return `-(${written(node.of)})`;
    case "binary":
      return `(${written(node.left)}) ${node.operator} (${written(node.right)})`;
    case "call":
      return `${node.name}(${node.args.map(written).join(", ")})`;
  }
}

describe("against mathjs's own evaluation", () => {
  it("gives the same number for random sums", () => {
    let compared = 0;
    fc.assert(
      fc.property(
        tree,
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 20 }),
        (node, interval, spread) => {
          const source = written(node);
          fc.pre(source.length <= 200);
          const ours = value(source, { interval, spread });
          if (typeof ours !== "number") return;
          const theirs: unknown = reference.evaluate(source, { interval, spread });
          expect(ours).toBeCloseTo(theirs as number, 9 - Math.ceil(Math.log10(Math.abs(ours) + 1)));
          compared += 1;
        },
      ),
      { seed: 20, numRuns: 2000 },
    );
    expect(compared).toBeGreaterThan(1000);
  });
});
