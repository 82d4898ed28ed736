import type { EditValue } from "../edit/edit-value.ts";
import * as limits from "../garment/read/limits.ts";
import { DEFAULT_WEIGHTS, OTHER_WEIGHT } from "../garment/weights.ts";
import { writtenAllowed } from "./allowed-values.ts";
import { quantitiesPath, withMotif } from "./change-allows.ts";
import { type Change, refused } from "./edit.ts";
import type { GarmentRule } from "./garment-rule.ts";
import { percentText, ruleTitle } from "./rule-words.ts";
import { hasKey, writtenAt } from "./written-value.ts";

const easeStep = 0.01;

/**
 * Moves what a rule prefers by one step.
 *
 * @param chosen the rule's value in the fit, from which a preference that was not stated starts
 */
export function movePreference(source: string, rule: GarmentRule, by: 1 | -1, chosen?: number): Change {
  if (rule.prefer === undefined) {
    if (chosen === undefined)
      return refused("There is no preference yet, and no fit to start one from; type one");
    return preferring(source, rule, chosen);
  }
  const step = rule.allows.kind === "ease" ? easeStep : 1;
  return preferring(source, rule, Math.round((rule.prefer + by * step) * 1e4) / 1e4);
}

/** Puts what was typed in the place of the preference; nothing takes it out. */
export function typePreference(source: string, rule: GarmentRule, text: string): Change {
  if (text.trim() === "") return withoutPreference(source, rule);
  const [, digits] = /^\s*(-?\d+(?:\.\d+)?)\s*%?\s*$/.exec(text) ?? [];
  if (digits === undefined) return refused("Type a number, or nothing for no preference");
  return preferring(source, rule, rule.allows.kind === "ease" ? Number(digits) / 100 : Number(digits));
}

/** Makes a rule prefer a value: for an ease a fraction, else in the rule's unit. */
export function preferring(source: string, rule: GarmentRule, value: number): Change {
  const { allows } = rule;
  const isEase = allows.kind === "ease";
  const words = `${ruleTitle(rule)}: ${isEase ? percentText(value) : value} preferred`;
  if (isEase) {
    if (value < limits.ease.least || value > limits.ease.most)
      return refused(
        `Possible is from ${percentText(limits.ease.least)} to ${percentText(limits.ease.most)}`,
      );
    const edit = { path: [...rule.path, "prefer"], value: percentText(value) };
    return { edits: withMotif(source, rule, [edit]), words };
  }
  if (allows.kind !== "values") return refused(`${ruleTitle(rule)} has no preference`);
  if (value < allows.least) return refused(`Nothing below ${allows.least} is possible here`);
  if (value > allows.most) return refused(`Nothing above ${allows.most} is possible here`);
  const written = writtenAt(source, rule.path);
  if (hasKey(written, "allow", "prefer", "unit"))
    return { edits: [{ path: [...rule.path, "prefer"], value }], words };
  const listed = quantitiesPath(source, rule);
  if (listed) return { edits: [{ path: [...listed, "prefer"], value }], words };
  const whole: EditValue =
    written === undefined ? { prefer: value } : { allow: writtenAllowed(allows.allowed), prefer: value };
  return { edits: withMotif(source, rule, [{ path: rule.path, value: whole }]), words };
}

function withoutPreference(source: string, rule: GarmentRule): Change {
  if (rule.allows.kind === "ease")
    return refused("An ease always has a preference; set its weight to 0 instead");
  if (rule.prefer === undefined) return refused("There is no preference to take out");
  const words = `${ruleTitle(rule)}: no preference`;
  const table = quantitiesPath(source, rule) ?? rule.path;
  if (writtenAt(source, [...table, "prefer"]) !== undefined)
    return { edits: [{ path: [...table, "prefer"], remove: true }], words };
  // The preference comes with a built-in motif: what is allowed, written alone, speaks for the preference as well.
  if (rule.allows.kind !== "values") return refused(`${ruleTitle(rule)} has no preference`);
  const value = writtenAllowed(rule.allows.allowed);
  return { edits: withMotif(source, rule, [{ path: rule.path, value }]), words };
}

/** Moves the weight of a rule's term by one step: by 0.1 up to 1, by 0.5 above. */
export function moveWeight(rule: GarmentRule, by: 1 | -1): Change {
  const { weight } = rule;
  if (!weight) return refused(`${ruleTitle(rule)} costs nothing, so it has no weight`);
  const step = weight.value < 1 || (weight.value === 1 && by === -1) ? 0.1 : 0.5;
  const value = Math.max(0, Math.round((weight.value + by * step) * 100) / 100);
  return value === weight.value ? refused("A weight cannot be below 0") : weighing(weight.term, value);
}

/** Puts what was typed in the place of the weight; nothing brings the usual one back. */
export function typeWeight(source: string, rule: GarmentRule, text: string): Change {
  const { weight } = rule;
  if (!weight) return refused(`${ruleTitle(rule)} costs nothing, so it has no weight`);
  const path = ["weights", weight.term];
  if (text.trim() === "") {
    const usual = DEFAULT_WEIGHTS[weight.term] ?? OTHER_WEIGHT;
    return writtenAt(source, path) === undefined
      ? refused(`It has its usual weight, ${usual}, already`)
      : { edits: [{ path, remove: true }], words: `weight of ${weight.term}: ${usual} as usual` };
  }
  const value = /^\s*\d+(?:\.\d+)?\s*$/.test(text) ? Number(text) : Number.NaN;
  if (!(value >= limits.weight.least && value <= limits.weight.most))
    return refused("Type a number from 0 on, or nothing for the usual weight");
  return weighing(weight.term, value);
}

const weighing = (term: string, value: number): Change => ({
  edits: [{ path: ["weights", term], value }],
  words: `weight of ${term}: ${value}`,
});
