import type { Engine } from "../../solver/program.ts";
import type { Fit } from "../fit/fit.ts";
import type { Kept } from "../fit/kept.ts";
import { fitAsked } from "../grading/fit-asked.ts";
import { differences } from "../report/differences.ts";
import { applyEdits } from "./apply-edits.ts";
import { moveEnd } from "./change-allows.ts";
import { chosenFor } from "./chosen.ts";
import { isRefused } from "./edit.ts";
import { type GarmentRule, isHeld } from "./garment-rule.ts";
import { type Beside, readSource } from "./read-source.ts";
import { allowsText, ruleTitle } from "./rule-words.ts";
import { rulesFor } from "./rules-for.ts";

/** One step by which a rule could give way. */
export interface Step {
  readonly rule: string;
  readonly end: "from" | "to";
  readonly by: 1 | -1;
}

/** What came of trying one step. */
export interface StepOutcome extends Step {
  /** The rule by name: "side margin of plait on sleeve". */
  readonly title: string;
  /** What it would allow then: "4 or more". */
  readonly allows: string;
  readonly fits: boolean;
  /** Cost of the fit there would be, less the cost of the present one; below 0 is better. */
  readonly costChange?: number;
  /** How that fit differs from the present one; empty where it does not. */
  readonly differences: readonly string[];
}

/**
 * The steps by which each rule could give way at either end. Rules that are held fast are left out: they are meant
 * to stay.
 */
export const givingSteps = (rules: readonly GarmentRule[]): readonly Step[] =>
  rules.flatMap((rule) => (isHeld(rule) ? [] : stepsOf(rule)));

function stepsOf({ id, allows }: GarmentRule): readonly Step[] {
  const down: Step = { rule: id, end: "from", by: -1 };
  const up: Step = { rule: id, end: "to", by: 1 };
  switch (allows.kind) {
    case "values":
      return allows.allowed.kind === "from" ? [down] : [down, up];
    case "least":
      return [down];
    case "length":
    case "most":
      return [up];
    case "ease":
      return [down, up];
    case "comparison":
      return [];
  }
}

/** Puts the steps first that are likeliest to matter: those of one rule, then those whose end the fit has reached. */
export function inOrderOfInterest(
  steps: readonly Step[],
  rules: readonly GarmentRule[],
  fit: Fit | undefined,
  first: string | undefined,
): readonly Step[] {
  const rank = (step: Step): number => {
    if (step.rule === first) return 0;
    const rule = rules.find(({ id }) => id === step.rule)!;
    return fit && atEnd(rule, step.end, fit) ? 1 : 2;
  };
  return [...steps].sort((a, b) => rank(a) - rank(b));
}

/** Whether a fit uses up what a rule allows at one end. */
export function atEnd(rule: GarmentRule, end: "from" | "to", fit: Fit): boolean {
  const chosen = chosenFor(rule, fit);
  if (chosen === undefined) return false;
  const { allows } = rule;
  switch (allows.kind) {
    case "values": {
      if (allows.allowed.kind === "from") return end === "from" && chosen === allows.allowed.least;
      return chosen === (end === "from" ? allows.allowed.values[0] : allows.allowed.values.at(-1));
    }
    case "least":
      return chosen <= allows.value;
    case "most":
      return chosen >= allows.value;
    case "length":
      return chosen >= Math.floor(allows.mm / allows.rowMm + 1e-9) && chosen > 0;
    case "ease":
    case "comparison":
      return false;
  }
}

/**
 * Tries one step: what the fit would be if the rule gave way so far.
 *
 * @returns undefined where the step cannot be made at all
 */
export async function tryStep(
  source: string,
  name: string,
  step: Step,
  present: Fit | undefined,
  engine: Engine,
  beside: Beside = {},
  kept?: Kept,
): Promise<StepOutcome | undefined> {
  const before = readSource(source, name, beside).garment;
  const rule = before && rulesFor(before).find(({ id }) => id === step.rule);
  if (!rule) return undefined;
  const change = moveEnd(source, rule, step.end, step.by, present && chosenFor(rule, present));
  if (isRefused(change)) return undefined;
  const edited = applyEdits(source, change.edits);
  if (!("text" in edited)) return undefined;
  const reading = readSource(edited.text, name, beside);
  const { garment } = reading;
  const moved = garment && rulesFor(garment).find(({ id }) => id === step.rule);
  if (!garment || !moved) return undefined;
  const result = await fitAsked({ ...reading, garment }, engine, { rivals: 0, ...(kept && { kept }) });
  const named = { ...step, title: ruleTitle(moved), allows: allowsText(moved.allows) };
  if (result.status !== "fits") return { ...named, fits: false, differences: [] };
  return {
    ...named,
    fits: true,
    ...(present && { costChange: result.fit.cost - present.cost }),
    differences: present ? differences(present, result.fit) : [],
  };
}
