import type { Path } from "../diagnostics/path.ts";

/** An arithmetic expression over a motif's quantities, parsed and found harmless. */
export interface Expression {
  /** As written in the file. */
  readonly source: string;
  /** Where it stands in the file. */
  readonly path: Path;
  readonly tree: ExpressionNode;
}

export type ExpressionNode =
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "quantity"; readonly name: string }
  | { readonly kind: "negate"; readonly of: ExpressionNode }
  | {
      readonly kind: "binary";
      readonly operator: "+" | "-" | "*" | "/";
      readonly left: ExpressionNode;
      readonly right: ExpressionNode;
    }
  | { readonly kind: "call"; readonly name: FunctionName; readonly args: readonly ExpressionNode[] };

export type FunctionName = "min" | "max" | "floor" | "ceil" | "round" | "abs" | "mod";
