import fc from "fast-check";
import { all, create } from "mathjs/number";
import { expect, test } from "vitest";
import { evaluateTree } from "../../../src/arithmetic/evaluate-tree.ts";
import { plainSum } from "../../../src/arithmetic/plain-sum.ts";
import { tokenize } from "../../../src/arithmetic/tokens.ts";

const mathjs = create(all ?? {});
const leaf = fc.oneof(
  fc.constantFrom("interval", "spread"),
  fc.nat(99).map(String),
  fc.constantFrom("0.5", ".25"),
);
const values = { interval: 6, spread: 5 };

const treeOf = (text: string) => {
  const tokens = tokenize(text);
  if ("code" in tokens) throw new Error(text);
  return plainSum(tokens);
};

test("reads the shortest sums as mathjs reads them", () => {
  const sums = fc.oneof(
    leaf,
    leaf.map((one) => `-${one}`),
    fc.tuple(leaf, fc.constantFrom("+", "-", "*"), leaf).map((parts) => parts.join(" ")),
  );
  fc.assert(
    fc.property(sums, (text) => {
      const tree = treeOf(text);
      expect(tree && evaluateTree(tree, values)).toBe(
        (mathjs.parse(text).evaluate({ ...values }) as number) + 0,
      );
    }),
    { seed: 11, numRuns: 400 },
  );
});

test.each(["1 + 2 * 3", "(1)", "min(1, 2)", "--1", "+1", "1 -", "2 spread"])(
  "leaves %s to the parser",
  (text) => {
    expect(treeOf(text)).toBeUndefined();
  },
);
