import type { ExpressionNode } from "../arithmetic/tree.ts";
import type { Path } from "../diagnostics/path.ts";

export type { ExpressionNode } from "../arithmetic/tree.ts";

/** An arithmetic expression over a motif's quantities, parsed and found harmless. */
export interface Expression {
  /** As written in the file. */
  readonly source: string;
  /** Where it stands in the file. */
  readonly path: Path;
  readonly tree: ExpressionNode;
}
