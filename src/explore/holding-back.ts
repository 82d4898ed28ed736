import type { Fit } from "../fit/fit.ts";
import type { Term } from "../fit/terms.ts";
import { counted } from "../report/words.ts";
import type { StepOutcome } from "./steps.ts";

/** Costs closer than this are the same: the solvers work to about 1e-7. */
const costGrain = 1e-4;

/** What keeps a fit from costing nothing, in one sentence. */
export function heldBackBy(fit: Fit): string {
  const [largest, ...rest] = [...fit.terms]
    .filter(({ cost }) => cost > costGrain)
    .sort((a, b) => b.cost - a.cost);
  if (!largest) return "Nothing holds it back: every preference is met.";
  const others = rest.length === 0 ? "" : `, then ${rest.map(({ term }) => term).join(", ")}`;
  return `Held back by ${termTitle(fit, largest)}: ${counted(largest.amount, largest.unit.replace(/s$/, ""), largest.unit)} off${others}.`;
}

/** A term by its name and, where there are several, by what it is the term of. */
export function termTitle(fit: Fit, { term, motif, placement, supply }: Term): string {
  if (fit.looks.length < 2 && fit.placements.length < 2) return term;
  const piece = fit.placements.find(({ index }) => index === placement)?.piece;
  return `${term} of ${motif ?? supply ?? piece ?? ""}`;
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
