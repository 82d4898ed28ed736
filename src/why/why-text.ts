import type { StepOutcome } from "../explore/steps.ts";
import { noFitText } from "../report/no-fit-text.ts";
import { wrap } from "../report/wrap.ts";
import type { Why } from "./why-json.ts";

/** What stands in the way and what would let the garment fit, or which rules bind, in words. */
export function whyText(title: string, why: Why, width: number): string {
  const lines =
    why.status === "does not fit"
      ? [noFitText(title, why.conflict, width), "", ...changeLines(why, width)]
      : [title, "=".repeat(title.length), "", ...bindingLines(why, width)];
  const unfinished = why.complete ? [] : ["", "The time allowed was up before everything was tried."];
  return [...lines, ...unfinished].join("\n");
}

function changeLines(
  { changes }: Extract<Why, { status: "does not fit" }>,
  width: number,
): readonly string[] {
  if (changes.length === 0)
    return wrap("No change of one rule, or of two together, was found that would let it fit.", width);
  return [
    ...wrap("Any one of these would let it fit, the least disturbing first; less of it would not:", width),
    ...changes.flatMap(({ words, cost }) =>
      wrap(`  - ${words} (disturbs by ${Number(cost.toFixed(2))})`, width, 4),
    ),
  ];
}

function bindingLines({ binding }: Extract<Why, { status: "fits" }>, width: number): readonly string[] {
  if (binding.length === 0) return ["It fits, and no rule holds it back."];
  return [
    "It fits. These rules bind:",
    ...binding.flatMap(({ giving, holding }) =>
      wrap(
        `  - ${giving.title}: ${[giving, ...(holding ? [holding] : [])].map(stepWords).join("; ")}`,
        width,
        4,
      ),
    ),
  ];
}

function stepWords({ allows, fits, costChange = 0 }: StepOutcome): string {
  const change = Number(Math.abs(costChange).toFixed(2));
  if (!fits) return `${allows} would not fit`;
  if (change === 0) return `${allows} would change nothing in cost`;
  return `${allows} would ${costChange < 0 ? "save" : "cost"} ${change}`;
}
