import { type EvaluationProblem, evaluateTree, type Values } from "../arithmetic/evaluate-tree.ts";
import type { Expression } from "./expression.ts";

export type { EvaluationProblem, Values } from "../arithmetic/evaluate-tree.ts";

/**
 * The value of a motif's expression for given values of its quantities.
 *
 * @param values each quantity's value, in its own unit, by name
 * @returns the number (never -0, never infinite), or why there is none; nothing is thrown
 */
export function evaluate(expression: Expression, values: Values): number | EvaluationProblem {
  return evaluateTree(expression.tree, values);
}
