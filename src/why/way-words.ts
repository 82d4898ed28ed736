import type { GarmentRule, RuleAllows } from "../explore/garment-rule.ts";
import { lengthText, percentText } from "../explore/rule-words.ts";
import type { NamedRule } from "../fit/refusal/rule.ts";
import { inWords, meetingInWords } from "../fit/refusal/rules-of.ts";
import type { Garment } from "../garment/garment.ts";
import { counted } from "../report/words.ts";

/** What to do so that a rule allows something else, and what it allows now: "leave at least 3 needles ... instead of 5". */
export function insteadWords(rule: GarmentRule, after: RuleAllows): string {
  const { allows: before, owner } = rule;
  if (after.kind === "least" && before.kind === "least")
    return `leave at least ${counted(after.value, "needle")} at each side of ${owner} instead of ${before.value}`;
  if (after.kind === "most" && before.kind === "most")
    return `knit on a bed of ${after.value} needles instead of ${before.value}`;
  if (after.kind === "comparison" && before.kind === "comparison")
    return `let ${owner} keep to ${after.source} instead of ${before.source}`;
  if (after.kind === "length" && before.kind === "length")
    return `let the ${owner} ${rule.name} by up to ${rowsAndLength(after)} instead of ${lengthBefore(before)}`;
  if (after.kind === "ease" && before.kind === "ease")
    return after.to === before.to
      ? `allow ${owner} an ease down to ${percentText(after.from)} instead of ${percentText(before.from)}`
      : `allow ${owner} an ease up to ${percentText(after.to)} instead of ${percentText(before.to)}`;
  if (after.kind === "values" && before.kind === "values")
    return valuesWords(rule, inWords(after.allowed), inWords(before.allowed));
  return `change ${rule.name} of ${owner}`;
}

type LengthAllowed = Extract<RuleAllows, { readonly kind: "length" }>;

const rowsIn = ({ mm, rowMm }: LengthAllowed): number => Math.floor(mm / rowMm + 1e-9);

const rowsAndLength = (allowed: LengthAllowed): string =>
  `${counted(rowsIn(allowed), "row")} (${lengthText(allowed.mm)})`;

function lengthBefore(allowed: LengthAllowed): string {
  if (allowed.mm === 0) return "not at all";
  return rowsIn(allowed) === 0
    ? `${lengthText(allowed.mm)}, which is less than a row`
    : rowsAndLength(allowed);
}

function valuesWords({ path, owner, name, unit }: GarmentRule, after: string, before: string): string {
  switch (path.at(-1)) {
    case "repeats":
      return `allow ${after} ${ofUnit(after, "repeat")} of ${owner} instead of ${before}`;
    case "columns":
      return `allow ${after} ${ofUnit(after, "column")} of ${owner} instead of ${before}`;
    case "gap":
      return `allow a gap of ${after} ${ofUnit(after, "needle")} between the columns of ${owner} instead of ${before}`;
    case "bottom":
      return `leave ${after} ${ofUnit(after, "row")} below ${owner} instead of ${before}`;
    case "top":
      return `leave ${after} ${ofUnit(after, "row")} above ${owner} instead of ${before}`;
    case "left":
    case "right":
      return `leave ${after} ${ofUnit(after, "needle")} ${path.at(-1)} of ${owner} instead of ${before}`;
    default:
      return `let the ${name} of ${owner} be ${after} ${ofUnit(after, unit.replace(/s$/, ""))} instead of ${before}`;
  }
}

const ofUnit = (words: string, one: string): string => (words === "1" ? one : `${one}s`);

/** What to do without, in the words of the rule that is given up. */
export function takenOutWords({ placements, motifs }: Garment, { path, words }: NamedRule): string {
  const placement = placements.find((one) => one.path.every((key, at) => path[at] === key));
  if (placement) {
    const at = path[placement.path.length + 1];
    const meeting = placement.meet[typeof at === "number" ? at : 0]!;
    return `do not ask that ${placement.motif} on ${placement.piece} is ${meetingInWords(meeting)}`;
  }
  const motif = motifs.find((one) => one.path.every((key, at) => path[at] === key));
  const rule = motif?.rules[Number(path.at(-1))];
  return motif && rule ? `take the rule ${rule.source} out of ${motif.name}` : `do not ask that ${words}`;
}
