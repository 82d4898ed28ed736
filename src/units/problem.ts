/** Why a text is not a length, a weight, an age or a percentage; `message` is a sentence without its full stop. */
export interface UnitProblem {
  readonly code: UnitCode;
  readonly message: string;
  readonly expected: string;
}

export type UnitCode =
  | "missing-unit"
  | "unknown-unit"
  | "decimal-comma"
  | "not-a-length"
  | "not-a-weight"
  | "not-an-age"
  | "missing-percent"
  | "not-a-percentage";

export const unitProblem = (
  code: UnitCode,
  message: string,
  expected: string,
): { readonly problem: UnitProblem } => ({ problem: { code, message, expected } });
