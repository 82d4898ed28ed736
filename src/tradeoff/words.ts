import { differences } from "../report/differences.ts";
import { counted, listed } from "../report/words.ts";
import type { TradeOff, TradePoint } from "./trade.ts";
import type { TradeTerm } from "./trade-term.ts";

/** "length", or for the rest what it is. */
export const termName = ({ name, unit }: TradeTerm): string =>
  unit === undefined ? "everything else" : name;

/** What its amounts are counted in: "rows", or for the rest "weighed". */
export const unitName = ({ unit }: TradeTerm): string => unit ?? "weighed";

/** To the grain in which amounts are told apart: "2", "0.82". */
export const amountText = (amount: number): string => String(Number(amount.toFixed(3)));

/** "2 rows", "0.82 percentage points", and for the rest "4.32". */
export const amountWords = ({ unit }: TradeTerm, amount: number): string =>
  unit === undefined ? amountText(amount) : counted(Number(amount.toFixed(3)), unit.replace(/s$/, ""), unit);

/** "Trade-off between length and balance, with no more interval and spread than the best fit has". */
export function headline({ terms, held }: Pick<TradeOff, "terms" | "held">): string {
  const between = `Trade-off between ${listed(terms.map(termName))}`;
  return held.length === 0
    ? between
    : `${between}, giving up no more in ${listed(held.map(termName))} than the best fit does`;
}

/** What is certain of the points. */
export const certainty = ({ complete, points }: TradeOff): string =>
  complete
    ? "Proven: no other fit gives up less in one of them and no more in the others."
    : points.length === 0
      ? "The search was ended before the first point was proven."
      : "Each point is proven; the search was ended before it was certain that there are no more.";

/** Whether one fit is the best in all that is traded. */
export const isOneForAll = ({ points, complete }: TradeOff): boolean => complete && points.length === 1;

export const oneForAll = ({ terms }: TradeOff): string =>
  `Nothing has to be traded: this one fit gives up the least in ${terms.length === 2 ? "both" : "all three"}.`;

/** How a knitter tells a point's fit from the best one. */
export function pointWords({ best, bestAt }: TradeOff, { fit }: TradePoint, at: number): string {
  if (at === bestAt) return "the best fit";
  const found = differences(best.fit, fit);
  return found.length > 0 ? found.join(", ") : "margins apart from the best fit";
}

/** Said once of all points. */
export const oneOfAll = "Each point stands for all fits that give up the same; one of them is shown.";

/** That the best fit is no point, and which point gives up less in something and no more in anything. */
export function besideWords(
  { points, best, bestAt, terms, complete }: TradeOff,
  mark: (index: number) => string = (index) => String(index + 1),
): string | undefined {
  if (bestAt !== undefined) return undefined;
  const at = points.findIndex(({ amounts }) =>
    amounts.every((amount, term) => amount <= best.amounts[term]! + 1e-9),
  );
  const point = points[at];
  const off = "the best fit: the least in all, with everything weighed";
  if (!point) return complete ? off : `${off}; no point found so far is better in what is traded`;
  const less = terms.filter((_, term) => point.amounts[term]! < best.amounts[term]! - 1e-9).map(termName);
  return less.length === 0 ? off : `${off}; ${mark(at)} gives up less in ${listed(less)}`;
}
