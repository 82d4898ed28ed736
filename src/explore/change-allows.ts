import type { EditValue } from "../edit/edit-value.ts";
import { type Allowed, only } from "../garment/allowed.ts";
import * as limits from "../garment/read/limits.ts";
import { movedEnd, typedAllowed, writtenAllowed } from "./allowed-values.ts";
import { type Change, type Edit, refused } from "./edit.ts";
import type { GarmentRule } from "./garment-rule.ts";
import { allowedText, allowsText, lengthText, percentText, ruleTitle } from "./rule-words.ts";
import { hasKey, writtenAt } from "./written-value.ts";

/** Half a millimetre: finer lengths are not measured on cloth. */
const lengthGrainMm = 0.5;
const easeStep = 0.01;

/**
 * Moves one end of what a rule allows by one step.
 *
 * @param by +1 moves the end up, -1 down
 * @param chosen the rule's value in the fit, from which a range without an upper end gets one
 */
export function moveEnd(
  source: string,
  rule: GarmentRule,
  end: "from" | "to",
  by: 1 | -1,
  chosen?: number,
): Change {
  const { allows } = rule;
  switch (allows.kind) {
    case "values": {
      const moved = movedEnd(allows.allowed, end, by, {
        least: allows.least,
        most: allows.most,
        ...(chosen !== undefined && { chosen }),
      });
      return typeof moved === "string" ? refused(moved) : allowing(source, rule, closed(rule, moved));
    }
    case "least":
      if (end === "to") return refused(`${ruleTitle(rule)} has no upper end`);
      return allows.value + by < 0
        ? refused("Nothing below 0 is possible here")
        : leastChange(source, rule, allows.value + by);
    case "most": {
      if (end === "from") return refused(`${ruleTitle(rule)} has no lower end`);
      const value = allows.value + by;
      return value < allows.least || value > allows.greatest
        ? refused(`Possible is from ${allows.least} to ${allows.greatest}`)
        : put(rule, rule.path, value, `up to ${value}`);
    }
    case "length": {
      if (end === "from") return refused(`${ruleTitle(rule)} has no lower end`);
      const rows = Math.floor(allows.mm / allows.rowMm + 1e-9) + by;
      if (rows < 0) return refused("It is less than one row already");
      return lengthChange(rule, rowsMm(rows, allows.rowMm));
    }
    case "ease": {
      const moved = { from: allows.from, to: allows.to };
      moved[end] = Math.round((moved[end] + by * easeStep) * 1e4) / 1e4;
      return easeChange(source, rule, moved);
    }
    case "comparison":
      return refused("A comparison has no ends to move; press Enter to type another");
  }
}

/** The shortest length, in half millimetres, that holds so many rows. */
export const rowsMm = (rows: number, rowMm: number): number =>
  Math.ceil((rows * rowMm) / lengthGrainMm - 1e-9) * lengthGrainMm;

/** Puts what was typed in the place of what a rule allows. */
export function typeAllows(source: string, rule: GarmentRule, text: string): Change {
  const { allows } = rule;
  switch (allows.kind) {
    case "values": {
      const typed = typedAllowed(text, allows.least, allows.most);
      if (typeof typed === "string") return refused(typed);
      return allowing(source, rule, closed(rule, typed));
    }
    case "least": {
      const value = wholeIn(text, limits.countOf.least, limits.countOf.most);
      return typeof value === "string" ? refused(value) : leastChange(source, rule, value);
    }
    case "most": {
      const value = wholeIn(text, allows.least, allows.greatest);
      return typeof value === "string" ? refused(value) : put(rule, rule.path, value, `up to ${value}`);
    }
    case "length": {
      const [, number, unit] = /^\s*(?:up to\s*)?(\d+(?:\.\d+)?)\s*(mm|cm|in)\s*$/.exec(text) ?? [];
      if (number === undefined || unit === undefined)
        return refused("Type a length with its unit, such as 6.5 mm, 1 cm or 0.5 in");
      const words = `${number} ${unit}`;
      return put(rule, rule.path, words, `up to ${words}`);
    }
    case "ease": {
      const [, from, to] =
        /^\s*(-?\d+(?:\.\d+)?)\s*%?\s*(?:to|\.\.)\s*(-?\d+(?:\.\d+)?)\s*%?\s*$/.exec(text) ?? [];
      if (from === undefined || to === undefined) return refused("Type two percentages, such as -5..15 %");
      return easeChange(source, rule, { from: Number(from) / 100, to: Number(to) / 100 });
    }
    case "comparison":
      return text.trim() === ""
        ? { edits: [{ path: rule.path, remove: true }], words: "the comparison was taken out" }
        : put(rule, rule.path, text.trim(), text.trim());
  }
}

/** Only margins can be written without an upper end; elsewhere one beyond all that is knitted stands for it. */
function closed({ path }: GarmentRule, allowed: Allowed): Allowed {
  if (allowed.kind === "list" || path.includes("margins")) return allowed;
  return only(
    ...Array.from({ length: endlessMost - allowed.least + 1 }, (_, index) => allowed.least + index),
  );
}

/** More repeats, columns or needles than this between two marks are never knitted. */
const endlessMost = 999;

function wholeIn(text: string, least: number, most: number): number | string {
  const [, digits] = /^\s*(?:up to\s*)?(\d+)\s*(?:or more)?\s*$/.exec(text) ?? [];
  if (digits === undefined) return "Type a whole number";
  const value = Number(digits);
  return value < least || value > most ? `Possible is from ${least} to ${most}` : value;
}

/** Lets a rule allow these values and no others; how the rest of it is written stays. */
export function allowing(source: string, rule: GarmentRule, allowed: Allowed): Change {
  const value = writtenAllowed(allowed);
  const words = `${ruleTitle(rule)}: ${allowedText(allowed)}`;
  const written = writtenAt(source, rule.path);
  if (hasKey(written, "allow", "prefer", "unit"))
    return { edits: [{ path: [...rule.path, "allow"], value }], words };
  const listed = quantitiesPath(source, rule);
  if (listed) return { edits: [{ path: [...listed, "allow"], value }], words };
  // What is allowed, written alone, would speak for the preference as well, and drop the one that was meant.
  const whole: EditValue = rule.prefer === undefined ? value : { allow: value, prefer: rule.prefer };
  return { edits: withMotif(source, rule, [{ path: rule.path, value: whole }]), words };
}

/** Where a motif that is written out in full keeps the quantity. */
export function quantitiesPath(source: string, rule: GarmentRule): GarmentRule["path"] | undefined {
  if (rule.motif === undefined || writtenAt(source, rule.path) !== undefined) return undefined;
  const path = [...rule.path.slice(0, -1), "quantities", rule.name];
  return writtenAt(source, path) === undefined ? undefined : path;
}

/** A built-in motif that is placed as it is gets an entry of its own before one of its quantities is overridden. */
export function withMotif(source: string, rule: GarmentRule, edits: readonly Edit[]): readonly Edit[] {
  if (rule.motif === undefined || writtenAt(source, ["motifs", rule.motif]) !== undefined) return edits;
  return [{ path: ["motifs", rule.motif, "like"], value: rule.motif }, ...edits];
}

/** Lets a rule allow one value only. */
export const holding = (source: string, rule: GarmentRule, value: number): Change =>
  allowing(source, rule, only(value));

function lengthChange(rule: GarmentRule, mm: number): Change {
  return put(rule, rule.path, lengthText(mm), `up to ${lengthText(mm)}`);
}

function easeChange(source: string, rule: GarmentRule, to: { from: number; to: number }): Change {
  if (to.from > to.to) return refused("The lower end would lie above the upper end");
  if (to.from < limits.ease.least || to.to > limits.ease.most)
    return refused(`Possible is from ${percentText(limits.ease.least)} to ${percentText(limits.ease.most)}`);
  const { allows } = rule;
  if (allows.kind !== "ease") return refused("Only an ease is counted in percent");
  const edits = (["from", "to"] as const)
    .filter((end) => allows[end] !== to[end])
    .map((end): Edit => ({ path: [...rule.path, end], value: percentText(to[end]) }));
  return {
    edits: withMotif(source, rule, edits),
    words: `${ruleTitle(rule)}: ${allowsText({ kind: "ease", ...to })}`,
  };
}

function leastChange(source: string, rule: GarmentRule, value: number): Change {
  const path = hasKey(writtenAt(source, rule.path), "least") ? [...rule.path, "least"] : rule.path;
  return put(rule, path, value, `${value} or more`);
}

const put = (rule: GarmentRule, path: GarmentRule["path"], value: EditValue, words: string): Change => ({
  edits: [{ path, value }],
  words: `${ruleTitle(rule)}: ${words}`,
});
