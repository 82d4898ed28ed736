import { bestBeside, markOf } from "./plot.ts";
import type { TradeOff, TradePoint } from "./trade.ts";
import type { TradeTerm } from "./trade-term.ts";
import { amountText, termName, unitName } from "./words.ts";

/** The numbers of a trade-off in columns that stand below their heads. */
export interface Table {
  /** Two lines: the terms, and their units. */
  readonly heads: readonly string[];
  /** One for each point, and one more for the best fit where it is no point. */
  readonly rows: readonly string[];
}

/** @param short where there is little room: `rest` for everything else, and units cut down */
export function tableOf({ terms, points, best, bestAt }: TradeOff, short: boolean): Table {
  const rows = [
    ...points.map((point, at) => [markOf(at), ...numbersOf(point)]),
    ...(bestAt === undefined ? [[bestBeside, ...numbersOf(best)]] : []),
  ];
  const heads = [
    ["", ...terms.map((term) => (short ? term.name : termName(term))), "cost"],
    ["", ...terms.map((term) => (short ? shortUnit(term) : unitName(term))), short ? "" : "weighed"],
  ];
  const all = [...heads, ...rows];
  const widths = heads[0]!.map((_, at) =>
    Math.max(at === 0 ? 2 : 0, ...all.map((cells) => cells[at]!.length)),
  );
  const gap = short ? "  " : "   ";
  const lineOf = ([mark, ...cells]: readonly string[]): string =>
    `${mark!.padStart(widths[0]!)}  ${cells.map((cell, at) => cell.padStart(widths[at + 1]!)).join(gap)}`.trimEnd();
  return { heads: heads.map(lineOf), rows: rows.map(lineOf) };
}

const numbersOf = ({ amounts, fit }: TradePoint): readonly string[] => [
  ...amounts.map(amountText),
  fit.cost.toFixed(3),
];

const shortUnit = (term: TradeTerm): string =>
  term.unit === "percentage points" ? "%-points" : (term.unit ?? "");
