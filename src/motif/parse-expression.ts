import { parseArithmetic } from "../arithmetic/parse-arithmetic.ts";
import type { ArithmeticProblem } from "../arithmetic/problem.ts";
import type { Path } from "../diagnostics/path.ts";
import type { Expression } from "./expression.ts";

/** What {@link parseExpression} found: the expression, or what is wrong and at which character. */
export type ParsedExpression = { readonly expression: Expression } | { readonly problem: ArithmeticProblem };

/**
 * Reads an expression over a motif's quantities: a number, or text such as `2 * interval`.
 *
 * @param written as it stands in the file
 * @param quantities the names that may be used
 * @param path where it stands in the file
 */
export function parseExpression(
  written: string | number,
  quantities: ReadonlySet<string>,
  path: Path,
): ParsedExpression {
  const source = String(written);
  if (typeof written === "number" && Number.isFinite(written)) {
    return { expression: { source, path, tree: { kind: "number", value: written } } };
  }
  const parsed = parseArithmetic(source, quantities);
  if ("problem" in parsed) return parsed;
  return { expression: { source, path, tree: parsed.tree } };
}
