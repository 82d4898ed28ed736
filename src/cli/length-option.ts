import { quoted } from "../diagnostics/shown.ts";
import { parseLength } from "../units/length.ts";
import { CommandError } from "./exit-codes.ts";

/**
 * A length in mm that an option gives, undefined where it was not given.
 *
 * @throws CommandError where it is no length, has no unit, or is not above 0
 */
export function lengthOption(name: string, value: string | boolean | undefined): number | undefined {
  if (typeof value !== "string") return undefined;
  const parsed = parseLength(value);
  if ("problem" in parsed)
    throw new CommandError(`--${name}: ${parsed.problem.message}; expected: ${parsed.problem.expected}.`);
  if (parsed.mm > 0) return parsed.mm;
  throw new CommandError(`--${name} takes a length above 0, and this is ${quoted(value)}.`);
}
