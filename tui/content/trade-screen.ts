import { counted } from "../../src/report/words.ts";
import { wrap } from "../../src/report/wrap.ts";
import { markOf, plot } from "../../src/tradeoff/plot.ts";
import { tableOf } from "../../src/tradeoff/table.ts";
import type { TradeOff } from "../../src/tradeoff/trade.ts";
import { REST } from "../../src/tradeoff/trade-term.ts";
import {
  amountWords,
  besideWords,
  certainty,
  headline,
  isOneForAll,
  oneForAll,
  oneOfAll,
  pointWords,
  termName,
} from "../../src/tradeoff/words.ts";
import { type OpenGarment, type TradeScreen, toTrade } from "../state.ts";
import { drawingPane } from "./drawing-pane.ts";
import type { Glyphs } from "./glyphs.ts";
import { fitHeight, type Line, line } from "./line.ts";
import { beside } from "./main-screen.ts";
import { paneTitle } from "./pane-title.ts";
import { firstLines, windowAround } from "./window.ts";

/** The terms to choose from, or the points of the trade-off between those that were chosen. */
export const tradeLines = (
  garment: OpenGarment,
  screen: TradeScreen,
  width: number,
  height: number,
  glyphs: Glyphs,
): readonly Line[] =>
  screen.found
    ? pointLines(garment, screen, screen.found, width, height, glyphs)
    : termLines(screen, width, height, glyphs);

function termLines(screen: TradeScreen, width: number, height: number, glyphs: Glyphs): readonly Line[] {
  const names = Math.max(...screen.terms.map(({ name }) => name.length));
  const isSuggested = (name: string): boolean => screen.traded.length === 0 && toTrade(screen).includes(name);
  const lines = screen.terms.map(({ name, unit, nothing }, index): Line => {
    const mark = isSuggested(name)
      ? "?"
      : screen.traded.includes(name)
        ? "x"
        : screen.held.includes(name)
          ? "="
          : " ";
    const about = nothing ?? (name === REST ? "all other terms together, as weighed" : unit);
    return line(
      `${index === screen.at ? glyphs.pointer : " "} [${mark}] ${name.padEnd(names)}  ${about}`,
      index === screen.at ? "chosen" : nothing === undefined ? "plain" : "dim",
    );
  });
  const head = [
    paneTitle("Trade-off", true, width, glyphs),
    ...wrap(
      "Which terms are to be traded for each other? Every fit is found of which no other gives up less in one of them and no more in the others. [x] is traded; of [=] no more is given up than the best fit does; [?] is suggested, and traded if you mark nothing.",
      width,
    ).map((text) => line(text)),
    line(""),
  ];
  const foot = screen.asked === undefined ? [] : [line(""), line("Working ... Esc gives it up.", "accent")];
  const room = Math.max(1, height - head.length - foot.length);
  return [...head, ...windowAround(lines, screen.at, room), ...foot];
}

const hint =
  "What else it gives up is free here: t goes back, to hold more terms or to trade the rest as well.";

/** From this height on there is a line to spare between the parts. */
const roomy = 24;

/** So many points are listed before the plot gets any room; it needs some for its axes, and no more than reads well. */
const leastRows = 6;
const leastPlotRows = 9;
const mostPlotRows = 20;

function pointLines(
  garment: OpenGarment,
  screen: TradeScreen,
  trade: TradeOff,
  width: number,
  height: number,
  glyphs: Glyphs,
): readonly Line[] {
  const right = Math.min(60, Math.max(22, Math.floor(width * 0.34)));
  const left = width - right - 3;
  const point = trade.points[screen.point]!;
  const words = [
    ...firstLines(
      inAccent(`${markOf(screen.point)}: ${pointWords(trade, point, screen.point)}`, left),
      4,
      left,
      glyphs.cut,
    ),
    ...(isOneForAll(trade) ? inAccent(`${oneForAll(trade)} ${hint}`, left) : []),
    ...(height >= roomy ? inAccent(oneOfAll, left) : []),
  ];
  const gap = height >= roomy ? [line("")] : [];
  const head = wrap(`${headline(trade)}. ${certainty(trade)}`, left).map((text) => line(text, "strong"));
  const table = tableLines(trade, screen.point);
  const above = head.length + gap.length + table.head.length;
  const rowsLeast = Math.min(table.rows.length, leastRows);
  const plotRows = Math.min(mostPlotRows, height - above - rowsLeast - words.length - gap.length);
  const drawn =
    trade.points.length > 1 && plotRows >= leastPlotRows
      ? plot(trade, { columns: left, rows: plotRows, unicode: glyphs.drawing === "braille" })
      : [];
  const room = Math.max(1, height - above - words.length - drawn.length - gap.length);
  const lines = [
    ...head,
    ...gap,
    ...table.head,
    ...windowAround(table.rows, screen.point, room),
    ...words,
    ...gap,
    ...drawn.map((text) => line(text)),
  ];
  const drawing = drawingPane(
    { ...garment, view: { ...garment.view, pane: "rules" }, solving: { ...garment.solving, current: true } },
    point.fit,
    right,
    height,
    glyphs,
  );
  return beside(
    [
      { lines: fitHeight(lines, height), width: left },
      { lines: drawing, width: right },
    ],
    height,
    glyphs,
  );
}

const inAccent = (words: string, width: number): readonly Line[] =>
  wrap(words, width).map((text) => line(text, "accent"));

function tableLines(
  trade: TradeOff,
  chosen: number,
): { readonly head: readonly Line[]; readonly rows: readonly Line[] } {
  const { heads, rows } = tableOf(trade, true);
  const best = trade.bestAt ?? trade.points.length;
  return {
    head: heads.map((text) => line(text, "dim")),
    rows: rows.map((text, index) =>
      line(index === best ? `${text}  best` : text, index === chosen ? "chosen" : "plain"),
    ),
  };
}

/** The same as sentences. */
export function tradeFacts(screen: TradeScreen): readonly string[] {
  const { found, terms, traded, held, at, asked, point } = screen;
  const suggested = traded.length === 0 ? toTrade(screen) : [];
  if (!found)
    return [
      "Trade-off: mark two terms, or three; where nothing is marked, what is suggested is traded.",
      ...(asked === undefined ? [] : ["Working. Escape gives it up."]),
      ...terms.map(({ name, nothing }, index) => {
        const mark = suggested.includes(name)
          ? ", suggested"
          : traded.includes(name)
            ? ", traded"
            : held.includes(name)
              ? ", held"
              : "";
        const idle = nothing === undefined ? "" : `, nothing to trade: ${nothing}`;
        return `${index === at ? "Chosen: " : ""}${name}${mark}${idle}.`;
      }),
    ];
  const beside = besideWords(found, markOf);
  return [
    `${headline(found)}. ${certainty(found)}`,
    ...(isOneForAll(found) ? [`${oneForAll(found)} ${hint}`] : []),
    ...found.points.map((one, index) => {
      const amounts = found.terms.map(
        (term, of) => `${termName(term)} ${amountWords(term, one.amounts[of]!)}`,
      );
      return `${index === point ? "Looked at: " : ""}Point ${index + 1} of ${counted(found.points.length, "point")}: ${amounts.join(", ")}, cost ${one.fit.cost.toFixed(3)}, ${pointWords(found, one, index)}.`;
    }),
    oneOfAll,
    ...(beside === undefined ? [] : [`${beside[0]!.toUpperCase()}${beside.slice(1)}.`]),
  ];
}
