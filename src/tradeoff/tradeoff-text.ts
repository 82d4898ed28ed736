import { wrap } from "../report/wrap.ts";
import { bestBeside, markOf, plot } from "./plot.ts";
import type { TradeOff, TradePoint } from "./trade.ts";
import {
  amountText,
  besideWords,
  certainty,
  headline,
  isOneForAll,
  oneForAll,
  pointWords,
  termName,
  unitName,
} from "./words.ts";

const plotRows = 16;
const mostPlotColumns = 76;

/** The points of a trade-off as a table and a plot, of at most `width` characters a line. */
export function tradeText(trade: TradeOff, width: number, unicode: boolean): string {
  const { points, best } = trade;
  const { title } = best.fit.garment;
  return [
    title,
    "=".repeat(title.length),
    "",
    ...wrap(headline(trade), width),
    ...wrap(certainty(trade), width),
    ...(isOneForAll(trade) ? wrap([oneForAll(trade), ...hint(trade)].join(" "), width) : []),
    "",
    ...tableLines(trade, width),
    ...(points.length > 1
      ? ["", ...plot(trade, { columns: Math.min(width, mostPlotColumns), rows: plotRows, unicode })]
      : []),
  ].join("\n");
}

/** How to ask for more, where nothing is held yet. */
const hint = ({ held }: TradeOff): readonly string[] =>
  held.length > 0
    ? []
    : [
        "What else it gives up is free here: --hold rest (or some of the other terms) asks for no more of it than the best fit gives up,",
        'and "rest" as one more term trades it.',
      ];

function tableLines(trade: TradeOff, width: number): readonly string[] {
  const { terms, points, best } = trade;
  const beside = besideWords(trade, markOf);
  const rows = [
    ...points.map((point, at) => row(markOf(at), point, pointWords(trade, point, at))),
    ...(beside === undefined ? [] : [row(bestBeside, best, beside)]),
  ];
  const heads = [
    ...terms.map((term) => [termName(term), unitName(term)] as const),
    ["cost", "weighed"] as const,
  ];
  const widths = heads.map(([name, unit], at) =>
    Math.max(name.length, unit.length, ...rows.map(({ numbers }) => numbers[at]!.length)),
  );
  const line = (mark: string, cells: readonly string[]): string =>
    `${mark.padStart(2)}  ${cells.map((cell, at) => cell.padStart(widths[at]!)).join("   ")}`;
  return [
    line(
      "",
      heads.map(([name]) => name),
    ),
    line(
      "",
      heads.map(([, unit]) => unit),
    ),
    ...rows.flatMap(({ mark, numbers, words }) => {
      const start = line(mark, numbers);
      // Beside the numbers where there is room for words, else below them.
      return width - start.length - 3 >= 24
        ? wrap(`${start}   ${words}`, width, start.length + 3)
        : [start, ...wrap(`      ${words}`, width, 6)];
    }),
  ];
}

const row = (mark: string, { amounts, fit }: TradePoint, words: string) => ({
  mark,
  numbers: [...amounts.map(amountText), fit.cost.toFixed(3)],
  words,
});
