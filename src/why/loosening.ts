import { allowing, rowsMm, typeAllows } from "../explore/change-allows.ts";
import type { Change } from "../explore/edit.ts";
import type { GarmentRule } from "../explore/garment-rule.ts";
import { evenStep, lengthText } from "../explore/rule-words.ts";
import { only } from "../garment/allowed.ts";
import * as limits from "../garment/read/limits.ts";
import { OTHER_WEIGHT } from "../garment/weights.ts";

/** A way for one rule to give way, further with every step; what fits after some steps fits after more of them. */
export interface Loosening {
  readonly rule: GarmentRule;
  /** The furthest that is looked at. */
  readonly mostSteps: number;
  readonly costPerStep: number;
  /** All that may be given up in so many steps. */
  readonly widely: (steps: number) => Change;
  /** The changes that give up no more than the last of so many steps does; one of them is the least. */
  readonly barely: (steps: number) => readonly Change[];
}

/** Rows or needles further than this are another garment, not a change of this one. */
const furthest = 40;
/** An ease is written to a hundredth of a percentage point. */
const easeGrain = 100;

/** The ways in which a rule can give way; none for a comparison, which can only be taken out. */
export function loosenings(source: string, rule: GarmentRule): readonly Loosening[] {
  const { allows } = rule;
  const weight = rule.weight?.value ?? OTHER_WEIGHT;
  const alongOneEnd = (
    mostSteps: number,
    typed: (steps: number) => string,
    costPerStep = weight,
  ): Loosening => {
    const widely = (steps: number): Change => typeAllows(source, rule, typed(steps));
    return { rule, mostSteps, costPerStep, widely, barely: (steps) => [widely(steps)] };
  };
  switch (allows.kind) {
    case "least":
      return [alongOneEnd(allows.value, (steps) => `${allows.value - steps} or more`)];
    case "most":
      return [alongOneEnd(allows.greatest - allows.value, (steps) => `up to ${allows.value + steps}`)];
    case "length": {
      const rows = Math.floor(allows.mm / allows.rowMm + 1e-9);
      return [alongOneEnd(furthest, (steps) => lengthText(rowsMm(rows + steps, allows.rowMm)))];
    }
    case "ease": {
      const [from, to] = [allows.from, allows.to].map((end) => Math.round(100 * easeGrain * end)) as [
        number,
        number,
      ];
      const typed = (low: number, high: number): string => `${low / easeGrain}..${high / easeGrain} %`;
      return [
        alongOneEnd(
          from - 100 * easeGrain * limits.ease.least,
          (steps) => typed(from - steps, to),
          weight / easeGrain,
        ),
        alongOneEnd(
          100 * easeGrain * limits.ease.most - to,
          (steps) => typed(from, to + steps),
          weight / easeGrain,
        ),
      ];
    }
    case "comparison":
      return [];
    case "values":
      return [amongValues(source, rule, allows, weight)];
  }
}

function amongValues(
  source: string,
  rule: GarmentRule,
  { allowed, least, most }: Extract<GarmentRule["allows"], { kind: "values" }>,
  costPerStep: number,
): Loosening {
  if (allowed.kind === "from") {
    const widely = (steps: number): Change => typeAllows(source, rule, `${allowed.least - steps} or more`);
    return {
      rule,
      mostSteps: allowed.least - least,
      costPerStep,
      widely,
      barely: (steps) => [widely(steps)],
    };
  }
  const { values } = allowed;
  // A motif's quantity that is a count of rows or needles is never 0.
  const lowest = rule.motif !== undefined && least === 0 && values[0]! > 0 ? 1 : least;
  const isNew = (value: number): boolean => value >= lowest && value <= most && !values.includes(value);
  const within = (steps: number): readonly number[] => [
    ...new Set(
      values.flatMap((value) => Array.from({ length: 2 * steps + 1 }, (_, index) => value - steps + index)),
    ),
  ];
  const isRange = values.length > 1 && evenStep(values) === 1;
  const added = (value: number): Change => {
    if (!isRange) return allowing(source, rule, only(...values, value));
    const [from, to] = [Math.min(value, values[0]!), Math.max(value, values.at(-1)!)];
    return allowing(source, rule, only(...Array.from({ length: to - from + 1 }, (_, index) => from + index)));
  };
  return {
    rule,
    mostSteps: furthest,
    costPerStep,
    widely: (steps) => allowing(source, rule, only(...values, ...within(steps).filter(isNew))),
    barely: (steps) => {
      const nearer = within(steps - 1);
      return within(steps)
        .filter((value) => isNew(value) && !nearer.includes(value))
        .map(added);
    },
  };
}
