import type { Fit } from "../fit/fit.ts";
import type { Allowed } from "../garment/allowed.ts";
import { allowing, holding } from "./change-allows.ts";
import { chosenFor } from "./chosen.ts";
import { type Change, type Edit, isRefused, refused } from "./edit.ts";
import { type GarmentRule, isHeld } from "./garment-rule.ts";
import { allowedText, ruleTitle } from "./rule-words.ts";

/** What each rule that is held fast allowed before, by its id: a file says only the one value that it allows now. */
export type BeforeHold = Readonly<Record<string, Allowed>>;

/** Holds a rule fast at its value in the fit. */
export function holdFast(source: string, rule: GarmentRule, fit: Fit | undefined): Change {
  if (isHeld(rule)) return refused(`${ruleTitle(rule)} is held fast already`);
  if (rule.allows.kind !== "values")
    return refused(`${ruleTitle(rule)} is a limit, not a choice: there is nothing to hold fast`);
  const chosen = fit && chosenFor(rule, fit);
  if (chosen === undefined) return refused("There is no fit whose value could be held fast");
  const change = holding(source, rule, chosen);
  return isRefused(change) ? change : { ...change, words: `${ruleTitle(rule)} is held fast at ${chosen}` };
}

/** Lets go of a rule that was held fast: it allows again what it did before. */
export function letGo(source: string, rule: GarmentRule, before: BeforeHold): Change {
  const allowed = before[rule.id];
  if (!isHeld(rule) || !allowed)
    return refused(
      isHeld(rule)
        ? `The file allows this one value and no other; widen it, or type what else it may be`
        : `${ruleTitle(rule)} is not held fast`,
    );
  const change = allowing(source, rule, allowed);
  return isRefused(change)
    ? change
    : { ...change, words: `${ruleTitle(rule)} is let go: ${allowedText(allowed)}` };
}

/** Several changes as one; the first that is refused refuses all. */
export function together(changes: readonly Change[], words: string): Change {
  const edits: Edit[] = [];
  for (const change of changes) {
    if (isRefused(change)) return change;
    edits.push(...change.edits);
  }
  return { edits, words };
}
