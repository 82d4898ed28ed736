import { wrap } from "../report/wrap.ts";
import { markOf, plot } from "./plot.ts";
import { tableOf } from "./table.ts";
import type { TradeOff } from "./trade.ts";
import { besideWords, certainty, headline, isOneForAll, oneForAll, oneOfAll, pointWords } from "./words.ts";

const plotRows = 16;
const mostPlotColumns = 76;
const leastForWords = 24;

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
    ...(points.length > 0 ? ["", ...wrap(oneOfAll, width)] : []),
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
  const long = tableOf(trade, false);
  const { heads, rows } = long.heads[0]!.length <= width ? long : tableOf(trade, true);
  const beside = besideWords(trade, markOf);
  const words = [
    ...trade.points.map((point, at) => pointWords(trade, point, at)),
    ...(beside === undefined ? [] : [beside]),
  ];
  return [
    ...heads,
    ...rows.flatMap((row, at) =>
      // Beside the numbers where there is room for words, else below them.
      width - row.length - 3 >= leastForWords
        ? wrap(`${row}   ${words[at]}`, width, row.length + 3)
        : [row, ...wrap(`      ${words[at]}`, width, 6)],
    ),
  ];
}
