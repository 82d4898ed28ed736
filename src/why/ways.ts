import { allowing, rowsMm, typeAllows } from "../explore/change-allows.ts";
import type { Change, Edit } from "../explore/edit.ts";
import type { GarmentRule, RuleAllows } from "../explore/garment-rule.ts";
import { evenStep, lengthText, percentText } from "../explore/rule-words.ts";
import {
  farColumns,
  farEase,
  farGap,
  farNeedles,
  farQuantity,
  farRepeats,
  farRows,
  leastQuantity,
} from "../fit/refusal/far.ts";
import type { NamedRule } from "../fit/refusal/rule.ts";
import { STEADY_RULE } from "../fit/refusal/steady-rule.ts";
import { type Allowed, anyFrom, only } from "../garment/allowed.ts";
import type { Garment } from "../garment/garment.ts";
import { OTHER_WEIGHT } from "../garment/weights.ts";
import { counted } from "../report/words.ts";
import { easedBy } from "./comparison.ts";
import { allowingInstead } from "./give-way.ts";
import { moreOnHand } from "./more-on-hand.ts";
import { steadyWay } from "./steady-way.ts";
import type { Giving, Way } from "./way.ts";
import { insteadWords, takenOutWords } from "./way-words.ts";

/** An ease is written to a hundredth of a percentage point. */
const easeGrain = 100;

/** A whole rule that is given up disturbs as much as so many rows, needles or percentage points. */
export const TAKEN_OUT_COST = 20;

/** What a comparison may come short by is at most the longest that it compares. */
const mostShort = 400;

/**
 * The ways in which a rule of a garment can give way: by steps where it is a limit that can be moved, else by being
 * taken out. None for what a wearer rules out.
 *
 * @param rules the garment's rules as they can be changed
 */
export function waysOf(
  source: string,
  garment: Garment,
  named: NamedRule,
  rules: readonly GarmentRule[],
): readonly Way[] {
  if (named.rule === STEADY_RULE) return [steadyWay(garment, named)];
  const rule = rules.find(({ id }) => id === named.rule);
  if (rule && rule.allows.kind !== "comparison") return movingWays(source, garment, rule, rule.allows);
  const supply = garment.onHand?.supplies.find(({ path }) => path.join() === named.path.join());
  if (supply) return [moreOnHand(garment, supply)];
  const edit = takingOut(garment, named);
  if (!edit) return [];
  const out: Way = {
    rule: named.rule,
    mostSteps: 1,
    followed: "until it is taken out",
    costPerStep: TAKEN_OUT_COST,
    widely: named.lift,
    barely: () => [{ change: { edits: [edit], words: takenOutWords(garment, named) }, give: named.lift }],
  };
  const eased = rule && easingWay(source, garment, rule);
  return [eased ? { ...eased, otherwise: out } : out];
}

/** The edit that takes a rule out of the file; undefined for a rule that has to stay. */
function takingOut({ placements, matches, motifs }: Garment, { path }: NamedRule): Edit | undefined {
  const isMeeting = placements.some(
    ({ path: place }) => path[place.length] === "meet" && startsWith(path, place),
  );
  const isMatch = matches.some((match) => match.path.join() === path.join());
  const isComparison = motifs.some(
    (motif) => path[motif.path.length] === "rules" && startsWith(path, motif.path),
  );
  return isMeeting || isMatch || isComparison ? { path, remove: true } : undefined;
}

const startsWith = (path: NamedRule["path"], start: NamedRule["path"]): boolean =>
  start.every((key, at) => path[at] === key);

/** A comparison that asks less and less. */
function easingWay(source: string, garment: Garment, rule: GarmentRule): Way | undefined {
  const motif = garment.motifs.find(({ name }) => name === rule.motif)!;
  const at = Number(rule.path.at(-1));
  const known = motif.rules[at]!;
  if (!easedBy(known, 1)) return undefined;
  const give = (one: Garment, steps: number): Garment => ({
    ...one,
    motifs: one.motifs.map((other) =>
      other.name === motif.name
        ? {
            ...other,
            rules: other.rules.map((old) => (old.source === known.source ? easedBy(old, steps)! : old)),
          }
        : other,
    ),
  });
  return {
    rule: rule.id,
    mostSteps: mostShort,
    followed: `up to ${mostShort} more`,
    costPerStep: OTHER_WEIGHT,
    widely: give,
    barely: (steps) => {
      const eased = easedBy(known, steps)!.source;
      const change = typeAllows(source, rule, eased);
      const words = insteadWords(rule, { kind: "comparison", source: eased });
      return [
        { change: "refused" in change ? change : { ...change, words }, give: (one) => give(one, steps) },
      ];
    },
  };
}

function movingWays(
  source: string,
  garment: Garment,
  rule: GarmentRule,
  allows: Exclude<RuleAllows, { readonly kind: "comparison" }>,
): readonly Way[] {
  const weight = rule.weight?.value ?? OTHER_WEIGHT;
  const giving = (after: RuleAllows, change: Change): Giving => ({
    change: "refused" in change ? change : { ...change, words: insteadWords(rule, after) },
    give: (one) => allowingInstead(one, rule.path, after),
  });
  const alongOneEnd = (
    mostSteps: number,
    followed: string,
    allowsAfter: (steps: number) => RuleAllows,
    typed: (steps: number) => string,
    costPerStep = weight,
  ): Way => ({
    rule: rule.id,
    mostSteps,
    followed,
    costPerStep,
    widely: (one, steps) => allowingInstead(one, rule.path, allowsAfter(steps)),
    barely: (steps) => [giving(allowsAfter(steps), typeAllows(source, rule, typed(steps)))],
  });
  switch (allows.kind) {
    case "least": {
      const after = (steps: number) => ({ ...allows, value: allows.value - steps });
      return [alongOneEnd(allows.value, "down to 0", after, (steps) => `${after(steps).value} or more`)];
    }
    case "most": {
      const after = (steps: number) => ({ ...allows, value: allows.value + steps });
      const followed = `up to ${counted(allows.greatest, "needle")}`;
      return [
        alongOneEnd(
          allows.greatest - allows.value,
          followed,
          after,
          (steps) => `up to ${after(steps).value}`,
        ),
      ];
    }
    case "length": {
      const rows = Math.floor(allows.mm / allows.rowMm + 1e-9);
      const after = (steps: number) => ({ ...allows, mm: rowsMm(rows + steps, allows.rowMm) });
      const followed = `up to ${counted(farRows, "row")}`;
      return [
        alongOneEnd(Math.max(0, farRows - rows), followed, after, (steps) => lengthText(after(steps).mm)),
      ];
    }
    case "ease": {
      const [from, to] = [allows.from, allows.to].map((end) => Math.round(100 * easeGrain * end)) as [
        number,
        number,
      ];
      const ease = (low: number, high: number): RuleAllows => ({
        kind: "ease",
        from: low / (100 * easeGrain),
        to: high / (100 * easeGrain),
      });
      const typed = (low: number, high: number): string => `${low / easeGrain}..${high / easeGrain} %`;
      return [
        alongOneEnd(
          from - 100 * easeGrain * farEase.from,
          `down to ${percentText(farEase.from)}`,
          (steps) => ease(from - steps, to),
          (steps) => typed(from - steps, to),
          weight / easeGrain,
        ),
        alongOneEnd(
          100 * easeGrain * farEase.to - to,
          `up to ${percentText(farEase.to)}`,
          (steps) => ease(from, to + steps),
          (steps) => typed(from, to + steps),
          weight / easeGrain,
        ),
      ];
    }
    case "values": {
      const { distance, least } = roomOf(garment, rule);
      const after = (allowed: Allowed): RuleAllows => ({ ...allows, allowed });
      const toAllow = (allowed: Allowed): Giving => giving(after(allowed), allowing(source, rule, allowed));
      const widely = (one: Garment, allowed: Allowed): Garment =>
        allowingInstead(one, rule.path, after(allowed));
      return [amongValues(rule, allows.allowed, { distance, least, weight, toAllow, widely })];
    }
  }
}

/** How far from what is allowed the values of a rule are looked at, and the least of them. */
function roomOf(garment: Garment, rule: GarmentRule): { readonly distance: number; readonly least: number } {
  const motif = garment.motifs.find(({ name }) => name === rule.motif);
  if (motif) {
    const quantity = motif.quantities.find(({ name }) => name === rule.name)!;
    return { distance: farQuantity(motif), least: leastQuantity(quantity) };
  }
  switch (rule.path.at(-1)) {
    case "repeats":
      return { distance: farRepeats, least: 1 };
    case "columns":
      return { distance: farColumns, least: 1 };
    case "gap":
      return { distance: farGap, least: 0 };
    default:
      return { distance: rule.unit === "rows" ? farRows : farNeedles, least: 0 };
  }
}

interface Among {
  readonly distance: number;
  readonly least: number;
  readonly weight: number;
  readonly toAllow: (allowed: Allowed) => Giving;
  readonly widely: (garment: Garment, allowed: Allowed) => Garment;
}

function amongValues(rule: GarmentRule, allowed: Allowed, among: Among): Way {
  const { distance, least, toAllow } = among;
  const common = { rule: rule.id, costPerStep: among.weight };
  if (allowed.kind === "from")
    return {
      ...common,
      mostSteps: Math.max(0, Math.min(distance, allowed.least - least)),
      followed: `down to ${Math.max(least, allowed.least - distance)}`,
      widely: (one, steps) => among.widely(one, anyFrom(allowed.least - steps)),
      barely: (steps) => [toAllow(anyFrom(allowed.least - steps))],
    };
  const { values } = allowed;
  const within = (steps: number): readonly number[] => [
    ...new Set(
      values.flatMap((value) => Array.from({ length: 2 * steps + 1 }, (_, index) => value - steps + index)),
    ),
  ];
  const isNew = (value: number): boolean => value >= least && !values.includes(value);
  const isRange = values.length > 1 && evenStep(values) === 1;
  const withValue = (value: number): Allowed => {
    if (!isRange) return only(...values, value);
    const [from, to] = [Math.min(value, values[0]!), Math.max(value, values.at(-1)!)];
    return only(...Array.from({ length: to - from + 1 }, (_, index) => from + index));
  };
  return {
    ...common,
    mostSteps: distance,
    followed: `up to ${distance} either way`,
    widely: (one, steps) => among.widely(one, only(...values, ...within(steps).filter(isNew))),
    barely: (steps) => {
      const nearer = within(steps - 1);
      return within(steps)
        .filter((value) => isNew(value) && !nearer.includes(value))
        .map((value) => toAllow(withValue(value)));
    },
  };
}
