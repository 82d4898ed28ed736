import type { Token } from "./tokens.ts";
import type { BinaryOperator, ExpressionNode } from "./tree.ts";

/**
 * The tree of a sum so short that no rule of precedence bears on it: a number or a name, one with a minus before
 * it, or two with an operator between them. Nearly all sums of a garment are of this kind, and making the parser
 * for them would be a good part of a short command's time. Undefined for any other sum.
 */
export function plainSum(tokens: readonly Token[]): ExpressionNode | undefined {
  const [first, second, third] = tokens;
  if (first && tokens.length === 1) return leaf(first);
  if (first?.text === "-" && second && tokens.length === 2) {
    const of = leaf(second);
    return of && { kind: "negate", of };
  }
  if (first && second?.kind === "operator" && third && tokens.length === 3) {
    const [left, right] = [leaf(first), leaf(third)];
    return left && right && { kind: "binary", operator: second.text as BinaryOperator, left, right };
  }
  return undefined;
}

function leaf({ kind, text }: Token): ExpressionNode | undefined {
  if (kind === "number") return { kind: "number", value: Number(text) };
  return kind === "name" ? { kind: "quantity", name: text } : undefined;
}
