import { evaluateTree } from "../arithmetic/evaluate-tree.ts";
import { parseArithmetic } from "../arithmetic/parse-arithmetic.ts";
import type { ExpressionNode } from "../arithmetic/tree.ts";

/** The name of a measurement as sums have it: "upper arm" is upper_arm. */
export const sumName = (measurement: string): string => measurement.replace(/[ -]/g, "_");

/** A sum that can be worked out, and the names it uses. */
export interface ReadSum {
  readonly names: readonly string[];
  /** @returns undefined where the sum has no value: something is divided by 0 */
  readonly value: (values: ReadonlyMap<string, number>) => number | undefined;
}

/**
 * Reads a sum of a description.
 *
 * @throws where it is none: descriptions come with the program, so that is a fault in it
 */
export function readSum(text: string, known: ReadonlySet<string>): ReadSum {
  const parsed = parseArithmetic(text, known);
  if ("problem" in parsed) throw new Error(`a shape's sum does not read: ${text}: ${parsed.problem.message}`);
  const { tree } = parsed;
  return {
    names: [...new Set(namesIn(tree))],
    value: (values) => {
      const value = evaluateTree(tree, values);
      return typeof value === "number" ? value : undefined;
    },
  };
}

function namesIn(node: ExpressionNode): readonly string[] {
  switch (node.kind) {
    case "number":
      return [];
    case "quantity":
      return [node.name];
    case "negate":
      return namesIn(node.of);
    case "binary":
      return [...namesIn(node.left), ...namesIn(node.right)];
    case "call":
      return node.args.flatMap(namesIn);
  }
}
