import type { ChoiceProgram, ChoiceRow } from "../../solver/choice.ts";
import { termsOf } from "../fit/candidates.ts";
import type { Measure } from "../fit/measure.ts";
import type { Prepared } from "../fit/prepare.ts";
import { amountOf, type TradeTerm } from "./trade-term.ts";

/**
 * Amounts are told apart by whole thousandths: of a percentage point, a needle or a row, or of one unit of cost. A
 * knitter sees no finer difference, and sums of whole numbers are exact.
 */
const GRAINS = 1000;

export const inGrains = (amount: number): number => Math.round(GRAINS * amount);

/** What looks and layouts add to each of some terms, in grains; `named` are all terms that are not the rest. */
export function measuresOf(terms: readonly TradeTerm[], named: ReadonlySet<string>): readonly Measure[] {
  return terms.map(
    (term): Measure => ({
      name: term.name,
      ofLook: (look) => inGrains(amountOf(term, look.terms, named)),
      ofLayout: ({ place, bottom, top, growth }) =>
        inGrains(amountOf(term, [...termsOf(place, bottom, top), ...(growth?.terms ?? [])], named)),
    }),
  );
}

/** The most that may be given up, in grains, by measure; infinite where nothing is held. */
export type Bounds = readonly number[];

/** The choice program with a row for each measure that adds up what is chosen of it, and which rows they are. */
export function measuredProgram(
  { choices, program }: Prepared,
  measures: readonly Measure[],
  bounds: Bounds,
): { readonly program: ChoiceProgram; readonly rows: readonly number[] } {
  const first = program.rows.length;
  const at = measures.map((measure) => choices.measures.indexOf(measure));
  const amountsOf = (group: number, option: number): readonly number[] => {
    const look = choices.looks[group]?.[option];
    if (look) return measures.map(({ ofLook }) => ofLook(look));
    const layout = choices.layouts[group - choices.looks.length]![option]!;
    return at.map((index) => layout.amounts[index]!);
  };
  const rows = measures.map(
    ({ name }, index): ChoiceRow => ({ name: `amount of ${name}`, relation: "<=", bound: bounds[index]! }),
  );
  return {
    rows: rows.map((_, index) => first + index),
    program: {
      rows: [...program.rows, ...rows],
      groups: program.groups.map((group, number) => ({
        ...group,
        options: group.options.map((option, index) => ({
          ...option,
          terms: [
            ...option.terms,
            ...amountsOf(number, index).map((amount, measure) => [first + measure, amount] as const),
          ],
        })),
      })),
    },
  };
}
