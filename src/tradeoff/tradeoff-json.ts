import { fitFields } from "../report/fit-json.ts";
import { roundTo } from "../report/rounding.ts";
import { inGrains } from "./measured.ts";
import type { TradeOff, TradePoint } from "./trade.ts";
import type { TradeTerm } from "./trade-term.ts";

/**
 * The machine-readable trade-off, format `evenrow-tradeoff/1`. Looks, placements and terms of a point are those of
 * `evenrow-fit/1`; amounts and costs are rounded to six decimals, and told apart by thousandths (`grain`).
 */
export function tradeToJson(trade: TradeOff, elapsedMs: number): object {
  const { terms, held, points, best, bestAt, complete, notes } = trade;
  return {
    format: "evenrow-tradeoff/1",
    status: "traded",
    terms: terms.map(termFields),
    ...(held.length > 0 && { held: held.map(termFields) }),
    grain: 1 / inGrains(1),
    complete,
    points: points.map((point, at) => ({
      ...pointFields(point, terms),
      proven: true,
      ...(at === bestAt && { best: true }),
      ...fitFields(point.fit),
    })),
    best: {
      ...pointFields(best, terms),
      ...(bestAt !== undefined && { point: bestAt + 1 }),
      ...fitFields(best.fit),
    },
    elapsed_ms: Math.round(elapsedMs),
    ...(notes.length > 0 && { notes }),
  };
}

const termFields = ({ name, unit }: TradeTerm): object => ({ term: name, unit: unit ?? "cost" });

const pointFields = ({ amounts, fit }: TradePoint, terms: readonly TradeTerm[]): object => ({
  amounts: Object.fromEntries(terms.map(({ name }, at) => [name, roundTo(amounts[at]!, 6)])),
  cost: roundTo(fit.cost, 6),
});
