import type { ChoiceProgram, ChoiceRow } from "../../solver/choice.ts";
import { termsOf } from "../fit/candidates.ts";
import type { Layout } from "../fit/layouts.ts";
import type { Measure } from "../fit/measure.ts";
import type { Prepared } from "../fit/prepare.ts";
import { costOf } from "../fit/terms.ts";
import type { Garment } from "../garment/garment.ts";
import { weightOf } from "../garment/weights.ts";
import { amountOf, type TradeTerm, WASTE } from "./trade-term.ts";

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

/**
 * What a layout's part in what is on hand adds to a term: each share of it that is taken leaves less over. It counts for
 * waste, and for the rest where waste is not named.
 */
function leftOver(
  { choices: { measures }, garment }: Prepared,
  terms: readonly TradeTerm[],
  named: ReadonlySet<string>,
  { amounts }: Layout,
): readonly number[] {
  const cost = measures.reduce((sum, { costEach = 0 }, index) => sum + costEach * amounts[index]!, 0);
  return terms.map((term) => ofWaste(term, named, cost, garment));
}

const ofWaste = (
  { name, unit }: TradeTerm,
  named: ReadonlySet<string>,
  cost: number,
  { weights }: Garment,
): number =>
  name === WASTE ? cost / weightOf(weights, WASTE) : unit === undefined && !named.has(WASTE) ? cost : 0;

/** What of the terms would be given up if nothing were taken of what is on hand, which the layouts do not tell. */
export function wasteOfAll(
  prepared: Prepared,
  terms: readonly TradeTerm[],
  named: ReadonlySet<string>,
): readonly number[] {
  const { choices, garment } = prepared;
  const [layout] = choices.layouts[0] ?? [];
  if (!layout) return terms.map(() => 0);
  const told = choices.measures.reduce(
    (sum, { costEach = 0 }, index) => sum + costEach * layout.amounts[index]!,
    costOf(layout.terms),
  );
  return terms.map((term) => ofWaste(term, named, layout.cost - told, garment));
}

/** The most that may be given up, in grains, by measure; infinite where nothing is held. */
export type Bounds = readonly number[];

/**
 * The choice program with a row for each measure that adds up what is chosen of it, and which rows they are.
 *
 * @param terms what the measures are of
 * @param named all terms that are not the rest
 */
export function measuredProgram(
  prepared: Prepared,
  terms: readonly TradeTerm[],
  named: ReadonlySet<string>,
  measures: readonly Measure[],
  bounds: Bounds,
): { readonly program: ChoiceProgram; readonly rows: readonly number[] } {
  const { choices, program } = prepared;
  const first = program.rows.length;
  const at = measures.map((measure) => choices.measures.indexOf(measure));
  const amountsOf = (group: number, option: number): readonly number[] => {
    const look = choices.looks[group]?.[option];
    if (look) return measures.map(({ ofLook }) => ofLook(look));
    const layout = choices.layouts[group - choices.looks.length]![option]!;
    const left = leftOver(prepared, terms, named, layout);
    return at.map((index, measure) => layout.amounts[index]! + inGrains(left[measure]!));
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
