/** Arithmetic as data: what is left of a text once everything but sums has been refused. */
export type ExpressionNode =
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "quantity"; readonly name: string }
  | { readonly kind: "negate"; readonly of: ExpressionNode }
  | {
      readonly kind: "binary";
      readonly operator: BinaryOperator;
      readonly left: ExpressionNode;
      readonly right: ExpressionNode;
    }
  | { readonly kind: "call"; readonly name: FunctionName; readonly args: readonly ExpressionNode[] };

export type BinaryOperator = "+" | "-" | "*" | "/";

export type FunctionName = "min" | "max" | "floor" | "ceil" | "round" | "abs" | "mod" | "needle";

/** How many values each function takes. */
export const FUNCTIONS: Readonly<Record<FunctionName, { readonly least: number; readonly most: number }>> = {
  min: { least: 1, most: Number.POSITIVE_INFINITY },
  max: { least: 1, most: Number.POSITIVE_INFINITY },
  floor: { least: 1, most: 1 },
  ceil: { least: 1, most: 1 },
  round: { least: 1, most: 1 },
  abs: { least: 1, most: 1 },
  mod: { least: 2, most: 2 },
  needle: { least: 1, most: 1 },
};

export const isFunctionName = (name: string): name is FunctionName => Object.hasOwn(FUNCTIONS, name);

/** Words that the grammar keeps for itself, so that no quantity can be called by them. */
export const RESERVED_WORDS: ReadonlySet<string> = new Set([
  ...Object.keys(FUNCTIONS),
  ...["and", "or", "xor", "not", "in", "to", "true", "false", "null", "undefined", "NaN", "Infinity", "end"],
]);

/** The form of a quantity's name. */
export const NAME_PATTERN = /^[A-Za-z_][A-Za-z0-9_]*$/;
