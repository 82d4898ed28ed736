import type { Allowed } from "../garment/allowed.ts";
import type { GarmentRule, RuleAllows } from "./garment-rule.ts";

/** What a set of whole numbers is called in short: "4", "2..9", "2, 4, 8", "5 or more". It can be typed so, too. */
export function allowedText(allowed: Allowed): string {
  if (allowed.kind === "from") return `${allowed.least} or more`;
  const { values } = allowed;
  const [first, last] = [values[0], values.at(-1)];
  if (first === undefined || last === undefined) return "none";
  if (values.length > 2 && last - first === values.length - 1) return `${first}..${last}`;
  const step = evenStep(values);
  if (values.length > 5 && step !== undefined) return `${first}..${last} by ${step}`;
  return values.join(", ");
}

/** The one step from each value to the next, where there is one. */
export function evenStep(values: readonly number[]): number | undefined {
  const step = (values[1] ?? 0) - (values[0] ?? 0);
  return values.length > 1 && values.every((value, index) => value === values[0]! + index * step)
    ? step
    : undefined;
}

const percent = (fraction: number): number => Number((100 * fraction).toFixed(2));

export const percentText = (fraction: number): string => `${percent(fraction)} %`;

/** Millimetres in the unit that is usual for the size: "6.5 mm", "1 cm". */
export const lengthText = (mm: number): string =>
  mm >= 10 && Number.isInteger(mm) ? `${Number((mm / 10).toFixed(2))} cm` : `${Number(mm.toFixed(2))} mm`;

/** What a rule allows, in short; what is typed in its place is read in the same form. */
export function allowsText(allows: RuleAllows): string {
  switch (allows.kind) {
    case "values":
      return allowedText(allows.allowed);
    case "least":
      return `${allows.value} or more`;
    case "most":
      return `up to ${allows.value}`;
    case "length":
      return `up to ${lengthText(allows.mm)}`;
    case "ease":
      return `${percent(allows.from)}..${percentText(allows.to)}`;
    case "comparison":
      return allows.source;
  }
}

/** "2", or for an ease "2 %"; empty where no preference is stated. */
export function preferText({ allows, prefer }: GarmentRule): string {
  if (prefer === undefined) return "";
  return allows.kind === "ease" ? percentText(prefer) : String(prefer);
}

/** The rule by its owner and its name, for messages. */
export const ruleTitle = ({ owner, name }: GarmentRule): string => `${name} of ${owner}`;
