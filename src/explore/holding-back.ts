import type { Fit } from "../fit/fit.ts";
import type { Term } from "../fit/terms.ts";
import { counted, placementWords } from "../report/words.ts";
import type { StepOutcome } from "./steps.ts";

/** Costs closer than this are the same: the solvers work to about 1e-7. */
const costGrain = 1e-4;

/** Terms that are named after the largest. */
const mostNamed = 3;

/** What keeps a fit from costing nothing, in one sentence. */
export function heldBackBy(fit: Fit): string {
  const [largest, ...rest] = [...fit.terms]
    .filter(({ cost }) => cost > costGrain)
    .sort((a, b) => b.cost - a.cost);
  if (!largest) return "Nothing holds it back: every preference is met.";
  const named = rest.slice(0, mostNamed).map((term) => termTitle(fit, term));
  const more = rest.length > mostNamed ? ` and ${rest.length - mostNamed} more` : "";
  const others = rest.length === 0 ? "" : `, then ${named.join(", ")}${more}`;
  return `Held back by ${termTitle(fit, largest)}: ${counted(largest.amount, largest.unit.replace(/s$/, ""), largest.unit)} off${others}.`;
}

/** A term by its name and, where there are several, by what it is the term of. */
export function termTitle(fit: Fit, { term, motif, placement, supply }: Term): string {
  if (fit.looks.length < 2 && fit.placements.length < 2) return term;
  const at = fit.placements.find(({ index }) => index === placement);
  return `${term} of ${motif ?? supply ?? (at ? placementWords(fit.placements, at) : "")}`;
}

/** Whether trying a step showed anything that the present fit has not. */
export const isHelpful = ({ fits, costChange }: StepOutcome): boolean =>
  fits && (costChange === undefined || costChange < -costGrain);

/** Whether what fits after a step costs the same as it does now. */
export const isIdle = ({ fits, costChange }: StepOutcome): boolean =>
  fits && costChange !== undefined && Math.abs(costChange) <= costGrain;

/** What one step would change, as part of a sentence: "4 or more: 0.80 less, spread 4 instead of 3". */
export function stepWords(step: StepOutcome): string {
  const { allows, fits, costChange, differences } = step;
  if (!fits) return `${allows}: still nothing fits`;
  if (costChange === undefined) return `${allows}: it fits`;
  if (isIdle(step)) return `${allows}: no change`;
  const saves = `${Math.abs(costChange).toFixed(2)} ${costChange < 0 ? "less" : "more"}`;
  return `${allows}: ${[saves, ...differences].join(", ")}`;
}

/** The same for all steps of one rule, as a sentence. */
export const stepsSentence = (outcomes: readonly StepOutcome[]): string =>
  `One step of ${outcomes[0]?.title ?? ""}: ${outcomes.map(stepWords).join("; ")}.`;

/** The outcomes that help, best first. */
export const helpful = (outcomes: readonly StepOutcome[]): readonly StepOutcome[] =>
  outcomes.filter(isHelpful).sort((a, b) => (a.costChange ?? 0) - (b.costChange ?? 0));
