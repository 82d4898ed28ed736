import { evaluate } from "./evaluate.ts";
import type { Rule } from "./motif.ts";
import type { Values } from "./trace.ts";

/** Whether a motif's values keep all of its rules; a rule that comes out as no number is not kept. */
export const keepsRules = (rules: readonly Rule[], values: Values): boolean =>
  rules.every((rule) => keepsRule(rule, values));

export function keepsRule(rule: Rule, values: Values): boolean {
  const left = evaluate(rule.left, values);
  const right = evaluate(rule.right, values);
  if (typeof left !== "number" || typeof right !== "number") return false;
  switch (rule.comparison) {
    case "<":
      return left < right - comparisonTolerance;
    case "<=":
      return left <= right + comparisonTolerance;
    case "=":
      return Math.abs(left - right) <= comparisonTolerance;
    case ">=":
      return left >= right - comparisonTolerance;
    case ">":
      return left > right + comparisonTolerance;
  }
}

/** Divisions such as `interval / 3 * 3` must still equal the interval. */
const comparisonTolerance = 1e-9;
