import type { Fit } from "../fit/fit.ts";
import type { GarmentRule } from "./garment-rule.ts";
import { percentText } from "./rule-words.ts";

/** What a fit chose for a rule, in the rule's unit (an ease as a fraction: the mean over its segments). */
export function chosenFor(
  { motif, placement, name, path, owner, allows }: GarmentRule,
  fit: Fit,
): number | undefined {
  if (motif !== undefined) {
    const look = fit.looks.find((one) => one.motif.name === motif);
    if (allows.kind !== "ease" || !look || look.segments.length === 0)
      return changesIn(fit, motif, name) ? undefined : look?.values.get(name);
    const { segments } = look;
    return segments.reduce((sum, { ease }) => sum + ease, 0) / segments.length;
  }
  if (placement !== undefined) {
    const fitted = fit.placements.find(({ index }) => index === placement);
    if (!fitted) return undefined;
    const { repeats, columns, gap, margins } = fitted;
    switch (path.at(-1)) {
      case "repeats":
        return repeats;
      case "columns":
        return columns;
      case "gap":
        return columns > 1 ? gap : undefined;
      case "side":
        return Math.min(margins.left, margins.right);
      case "bottom":
      case "top":
      case "left":
      case "right":
        return margins[path.at(-1) as keyof typeof margins];
      default:
        return undefined;
    }
  }
  if (allows.kind === "length") return changeOf(fit, owner, name);
  const widest = fit.pieces.map(({ left, right }) => Math.max(...left) + Math.max(...right));
  return Math.max(...widest);
}

/** Whether a quantity of a growing motif does change from repeat to repeat, so that no one value was chosen. */
const changesIn = (fit: Fit, motif: string, quantity: string): boolean =>
  fit.placements.some(
    ({ motif: name, sections }) =>
      name === motif && new Set(sections.map(({ look }) => look.values.get(quantity))).size > 1,
  );

/** Rows by which the fields of a piece became longer or shorter, as far as this rule is about it. */
function changeOf(fit: Fit, piece: string, name: string): number {
  const changes = fit.placements.filter((one) => one.piece === piece).map(({ change }) => change);
  return name === "grow" ? Math.max(0, ...changes) : Math.max(0, ...changes.map((change) => -change));
}

/** The same in words short enough for a table. */
export function chosenText(rule: GarmentRule, fit: Fit): string {
  const chosen = chosenFor(rule, fit);
  if (chosen === undefined) return rule.allows.kind === "comparison" ? "kept" : "";
  if (rule.allows.kind === "ease") return percentText(Math.round(chosen * 1000) / 1000);
  return rule.allows.kind === "length" ? `${chosen} ${chosen === 1 ? "row" : "rows"}` : String(chosen);
}
