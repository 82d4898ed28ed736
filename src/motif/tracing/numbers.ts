import type { Path } from "../../diagnostics/path.ts";
import { evaluate } from "../evaluate.ts";
import type { Expression } from "../expression.ts";
import type { Values } from "../trace.ts";

/** Leaves the tracing with a reason; never seen outside it. */
export class Refusal extends Error {
  constructor(
    readonly path: Path,
    message: string,
  ) {
    super(message);
  }
}

/** Refuses what an expression says; the values it was worked out with are told where they are given. */
export function refuse(expression: Expression, values: Values | undefined, message: string): never {
  const given = [...(values ?? [])].map(([name, value]) => `${name} ${value}`).join(", ");
  throw new Refusal(expression.path, given ? `${message} (with ${given})` : message);
}

export function needleOf(expression: Expression, values: Values): number {
  const needle = whole(expression, values, "a needle");
  if (needle === 0)
    refuse(expression, values, "there is no needle 0: needles count from 1 outward at each side");
  return needle;
}

export const boundaryOf = (expression: Expression, values: Values): number =>
  whole(expression, values, "the middle of a crossing");

export function count(expression: Expression, values: Values, what: string, least: number): number {
  const value = whole(expression, values, what);
  if (value < least)
    refuse(expression, values, `${what} must be at least ${least}, and this comes out as ${value}`);
  return value;
}

export function whole(expression: Expression, values: Values, what: string): number {
  const value = evaluate(expression, values);
  if (typeof value !== "number") return refuse(expression, values, value.problem);
  if (!Number.isInteger(value))
    refuse(expression, values, `${what} must be a whole number, and this comes out as ${value}`);
  // A negative zero would print as "-0" and differ from 0 as a key.
  return value + 0;
}
