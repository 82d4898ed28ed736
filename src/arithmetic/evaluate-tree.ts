import type { ExpressionNode, FunctionName } from "./tree.ts";

/** Why arithmetic gave no number; `problem` says it in a knitter's words. */
export interface EvaluationProblem {
  readonly reason: "division-by-zero" | "not-finite" | "unknown-quantity";
  readonly problem: string;
}

/** Values by name, as a map or as plain data. */
export type Values = ReadonlyMap<string, number> | Readonly<Record<string, number>>;

/**
 * A result this near to a whole number counts as whole before it is rounded up or down: 0.1 * 30 must not
 * become 4 because binary fractions make it 3.0000000000000004. Far below anything a needle or a row can show.
 */
const WHOLE_WITHIN = 1e-9;

/**
 * Evaluates arithmetic over named values.
 *
 * `mod(a, b)` is `a - b * floor(a / b)`, so its result has the sign of `b` and a pattern that runs across the
 * centre keeps its phase on both sides. `round` goes to the nearest whole number and halves go away from zero,
 * so that a strand and its mirror image round alike. `needle(place)` is the needle at a place that is counted without
 * the gap at the centre: place 1 is R1, place 0 is L1, place -1 is L2.
 *
 * @returns the number, or the problem where a divisor is zero, a name has no value, or the result is not finite
 */
export function evaluateTree(node: ExpressionNode, values: Values): number | EvaluationProblem {
  const result = walk(node, values);
  if (typeof result !== "number") return result;
  // Adding zero turns -0 into 0.
  return result + 0;
}

function walk(node: ExpressionNode, values: Values): number | EvaluationProblem {
  switch (node.kind) {
    case "number":
      return finite(node.value);
    case "quantity": {
      const value = lookUp(values, node.name);
      if (value === undefined) {
        return { reason: "unknown-quantity", problem: `there is no value for ${node.name}` };
      }
      return finite(value);
    }
    case "negate": {
      const of = walk(node.of, values);
      return typeof of === "number" ? -of : of;
    }
    case "binary": {
      const left = walk(node.left, values);
      if (typeof left !== "number") return left;
      const right = walk(node.right, values);
      if (typeof right !== "number") return right;
      if (node.operator === "/" && right === 0) return divisionByZero("dividing by 0");
      return finite(combine(node.operator, left, right));
    }
    case "call": {
      const args: number[] = [];
      for (const argument of node.args) {
        const value = walk(argument, values);
        if (typeof value !== "number") return value;
        args.push(value);
      }
      if (node.name === "mod" && args[1] === 0) return divisionByZero("mod by 0");
      return finite(apply(node.name, args));
    }
  }
}

function combine(operator: "+" | "-" | "*" | "/", left: number, right: number): number {
  switch (operator) {
    case "+":
      return left + right;
    case "-":
      return left - right;
    case "*":
      return left * right;
    case "/":
      return left / right;
  }
}

function apply(name: FunctionName, args: readonly number[]): number {
  const [first = Number.NaN, second = Number.NaN] = args;
  switch (name) {
    case "min":
      return Math.min(...args);
    case "max":
      return Math.max(...args);
    case "abs":
      return Math.abs(first);
    case "floor":
      return floor(first);
    case "ceil":
      return -floor(-first);
    case "round":
      return Math.sign(first) * floor(Math.abs(first) + 0.5);
    case "mod":
      return first - second * floor(first / second);
    case "needle":
      return first > 0 ? first : first - 1;
  }
}

function floor(value: number): number {
  const nearest = Math.round(value);
  return Math.abs(value - nearest) <= WHOLE_WITHIN ? nearest : Math.floor(value);
}

function lookUp(values: Values, name: string): number | undefined {
  if (values instanceof Map) return values.get(name);
  return Object.hasOwn(values, name) ? (values as Readonly<Record<string, number>>)[name] : undefined;
}

const divisionByZero = (problem: string): EvaluationProblem => ({ reason: "division-by-zero", problem });

function finite(value: number): number | EvaluationProblem {
  return Number.isFinite(value)
    ? value
    : { reason: "not-finite", problem: "the result is too large to be a number" };
}
