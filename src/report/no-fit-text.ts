import type { PlacedRule } from "./fit-json.ts";
import { wrap } from "./wrap.ts";

/**
 * Which rules fail to meet, in words, for a garment that nothing fits.
 *
 * @param conflict undefined where it was not found out
 */
export function noFitText(title: string, conflict: readonly PlacedRule[] | undefined, width: number): string {
  const lines = conflict ? conflictLines(conflict, width) : ["Nothing fits."];
  return [title, "=".repeat(title.length), "", ...lines].join("\n");
}

/** The same without the title. */
export function conflictLines(conflict: readonly PlacedRule[], width: number): readonly string[] {
  if (conflict.length === 0)
    return wrap(
      "Nothing fits, and no rule of the file alone is to blame: the field is too short or too narrow for the motif.",
      width,
    );
  const intro =
    conflict.length === 1
      ? "Nothing fits. This rule stands in the way whatever else is chosen:"
      : "Nothing fits. These rules cannot all be kept, whatever else gives way:";
  return [...wrap(intro, width), ...ruleLines(conflict, width)];
}

/** Rules one below the other, each with its line in the file. */
export const ruleLines = (rules: readonly PlacedRule[], width: number): readonly string[] =>
  rules.flatMap((rule) => wrap(lineOf(rule), width, 4));

const lineOf = ({ words, place }: PlacedRule): string =>
  `  - ${words} ${place ? `(line ${place.line})` : "(not stated in the file)"}`;
