/** Why a text is not arithmetic. `offset` counts characters from the start of the text. */
export interface ArithmeticProblem {
  readonly code: ArithmeticCode;
  readonly offset: number;
  /** A sentence without its full stop. */
  readonly message: string;
  readonly found: string;
  readonly expected: string;
}

export type ArithmeticCode =
  | "expression-empty"
  | "expression-too-long"
  | "expression-too-deep"
  | "expression-not-arithmetic"
  | "expression-unknown-name"
  | "expression-wrong-count";

/** What an expression may be made of, in a knitter's words. */
export const ARITHMETIC =
  "numbers, quantities, + - * / ( ) and the functions min max floor ceil round abs mod needle";
