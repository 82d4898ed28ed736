import { create, type MathNode, parseDependencies } from "mathjs/number";
import { checkTokens } from "./check-tokens.ts";
import { plainSum } from "./plain-sum.ts";
import { ARITHMETIC, type ArithmeticProblem } from "./problem.ts";
import { tokenize } from "./tokens.ts";
import { type ExpressionNode, isFunctionName } from "./tree.ts";

/** Longer than any sum over a handful of quantities; keeps the parser's work, and the tree's depth, small. */
export const LONGEST_EXPRESSION = 200;

/**
 * Turns text into arithmetic over the given names, or says what in it is not arithmetic and where.
 *
 * The grammar and its precedence are mathjs's; what may occur in it is a list of our own: decimal numbers, the
 * given names, `+ - * / ( )`, and the functions of `FUNCTIONS`. Text that holds anything else never reaches the
 * parser, whose language is far wider than sums; and the tree that comes back is copied by the same list, so
 * that none of the parser's own objects is ever evaluated.
 *
 * @param names the quantities that may be used
 */
export function parseArithmetic(
  text: string,
  names: ReadonlySet<string>,
): { readonly tree: ExpressionNode } | { readonly problem: ArithmeticProblem } {
  if (text.length > LONGEST_EXPRESSION) {
    return {
      problem: {
        code: "expression-too-long",
        offset: 0,
        found: text,
        message: `an expression of ${text.length} characters is too long`,
        expected: `at most ${LONGEST_EXPRESSION} characters`,
      },
    };
  }
  const tokens = tokenize(text);
  if ("code" in tokens) return { problem: tokens };
  if (tokens.length === 0) {
    return {
      problem: {
        code: "expression-empty",
        offset: 0,
        found: text,
        message: "there is nothing here",
        expected: "a number or a sum",
      },
    };
  }
  const problem = checkTokens(tokens, names);
  if (problem) return { problem };
  const tree = plainSum(tokens) ?? parse(text);
  if (tree) return { tree };
  return {
    problem: {
      code: "expression-not-arithmetic",
      offset: 0,
      found: text,
      message: "this is not a complete sum",
      expected: ARITHMETIC,
    },
  };
}

let parser: ((text: string) => MathNode) | undefined;

function parse(text: string): ExpressionNode | undefined {
  // Only the parser is made, and only when the first sum is met: the rest of mathjs would slow every start.
  parser ??= create(parseDependencies ?? {}).parse;
  try {
    return copy(parser(text));
  } catch {
    // The words were all fine, so they can only have stood in an order that is no sum.
    return undefined;
  }
}

/** A tree of our own from what mathjs read; undefined for anything that is not on the list. */
function copy(node: MathNode): ExpressionNode | undefined {
  if (isConstant(node)) {
    return typeof node.value === "number" ? { kind: "number", value: node.value } : undefined;
  }
  if (isParenthesis(node)) return copy(node.content);
  if (isSymbol(node)) return { kind: "quantity", name: node.name };
  if (isOperator(node)) return copyOperator(node);
  if (isCall(node) && isFunctionName(node.fn.name)) {
    const args = node.args.map(copy).filter((argument) => argument !== undefined);
    return args.length === node.args.length ? { kind: "call", name: node.fn.name, args } : undefined;
  }
  return undefined;
}

function copyOperator({ op, args, implicit }: OperatorLike): ExpressionNode | undefined {
  if (implicit) return undefined;
  const [left, right] = args.map(copy);
  if (!left) return undefined;
  if (args.length === 1) {
    if (op === "+") return left;
    return op === "-" ? { kind: "negate", of: left } : undefined;
  }
  if (!right || (op !== "+" && op !== "-" && op !== "*" && op !== "/")) return undefined;
  return { kind: "binary", operator: op, left, right };
}

interface OperatorLike {
  readonly op: string;
  readonly args: readonly MathNode[];
  readonly implicit: boolean;
}

const isConstant = (node: MathNode): node is MathNode & { readonly value: unknown } =>
  node.type === "ConstantNode";
const isParenthesis = (node: MathNode): node is MathNode & { readonly content: MathNode } =>
  node.type === "ParenthesisNode";
const isSymbol = (node: MathNode): node is MathNode & { readonly name: string } => node.type === "SymbolNode";
const isOperator = (node: MathNode): node is MathNode & OperatorLike => node.type === "OperatorNode";
const isCall = (
  node: MathNode,
): node is MathNode & { readonly fn: { readonly name: string }; readonly args: readonly MathNode[] } =>
  node.type === "FunctionNode";
