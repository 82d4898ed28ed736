import { isIdle, stepWords } from "../explore/holding-back.ts";
import type { StepOutcome } from "../explore/steps.ts";
import type { PlacedRule } from "../report/fit-json.ts";
import { conflictLines, ruleLines } from "../report/no-fit-text.ts";
import { wrap } from "../report/wrap.ts";
import type { LeastChange } from "./least-changes.ts";
import type { WhyNot, WhySo } from "./why.ts";
import type { PlacedWhy } from "./why-json.ts";

/** What stands in the way and what would let the garment fit, or which rules bind, in words. */
export const whyText = (title: string, why: PlacedWhy, width: number): string =>
  [title, "=".repeat(title.length), "", ...whyLines(why, width), ...unfinishedLines(why, width)].join("\n");

/** The same without the title, and without a word on whether everything was tried. */
export function whyLines(why: PlacedWhy, width: number): readonly string[] {
  if (why.status === "fits") return bindingLines(why, width);
  if (!why.smallest) return unsettledLines(why.conflict, width);
  const changes = changeLines(why, width);
  return [...conflictLines(why.conflict, width), ...(changes.length > 0 ? ["", ...changes] : [])];
}

const unsettledLines = (left: readonly PlacedRule[], width: number): readonly string[] => [
  ...wrap(
    "Nothing fits. Which rules stand in the way is not settled. They are among these, some of which may have nothing to do with it:",
    width,
  ),
  ...ruleLines(left, width),
];

/** Said where the search was ended early. */
export const unfinishedLines = (
  why: Pick<PlacedWhy, "complete" | "status">,
  width: number,
): readonly string[] =>
  why.complete
    ? []
    : [
        "",
        ...wrap(
          `The search ended before everything was tried${why.status === "fits" ? "" : ", so there may be other changes, and less disturbing ones"}. More time: --time-limit SECONDS`,
          width,
        ),
      ];

function changeLines(
  { changes, unhelpful, complete }: Pick<WhyNot, "changes" | "unhelpful" | "complete">,
  width: number,
): readonly string[] {
  if (changes.length === 0)
    return complete
      ? wrap("No change of one rule, or of two together, was found that would let it fit.", width)
      : [];
  return [
    ...wrap(headOfChanges, width),
    ...changes.flatMap((change) => wrap(`  - ${changeWords(change)}`, width, 4)),
    ...(unhelpful.length > 0 ? ["", headOfUnhelpful] : []),
    ...unhelpful.flatMap(({ words }) => wrap(`  - ${words}`, width, 4)),
  ];
}

/** Above the changes that would let it fit. */
export const headOfChanges =
  "Any one of these would let it fit, the least disturbing first (in brackets what it gives up, weighed as the fit's cost is); less of it would not:";

export const headOfUnhelpful = "Of the others that stand in the way:";

/** "leave at least 3 needles at each side of plait on cuff instead of 5 (disturbs by 2)". */
export const changeWords = ({ words, cost }: LeastChange): string =>
  `${words} (disturbs by ${Number(cost.toFixed(2))})`;

function bindingLines({ binding, complete }: WhySo, width: number): readonly string[] {
  if (binding.length === 0)
    return [complete ? "It fits, and no rule holds it back." : "It fits. No rule was found that binds."];
  return [
    "It fits. These rules bind; what a step of each would cost more or less:",
    ...binding.flatMap((one) => wrap(`  - ${bindingWords(one)}`, width, 4)),
  ];
}

/** A rule with what one step of it either way comes to. */
export const bindingWords = ({ giving, holding }: WhySo["binding"][number]): string =>
  `${giving.title}: ${[
    isIdle(giving) ? `at its end, but one step further (${giving.allows}) changes nothing` : wordsOf(giving),
    ...(holding ? [wordsOf(holding)] : []),
  ].join("; ")}`;

/** A step that takes away what the fit needs. */
const wordsOf = (step: StepOutcome): string =>
  step.fits ? stepWords(step) : `${step.allows}: nothing would fit`;
