import { printable } from "../diagnostics/shown.ts";
import { element, group, type Markup, nothing, type Pixel, pointList } from "../draw/svg/element.ts";
import { ink } from "../draw/svg/ink.ts";
import { label } from "../draw/svg/text.ts";
import { wrap } from "../report/wrap.ts";
import { pointLabels } from "./point-labels.ts";
import { ticks } from "./ticks.ts";
import type { TradeOff, TradePoint } from "./trade.ts";
import type { TradeTerm } from "./trade-term.ts";
import {
  amountText,
  amountWords,
  besideWords,
  certainty,
  headline,
  oneOfAll,
  pointWords,
  termName,
  unitName,
} from "./words.ts";

const width = 760;
const edge = 24;
const text = 13;
const line = 1.5 * text;
const box = { left: 96, right: width - 56, height: 340 } as const;
const dot = 6;
/** Letters of a sentence that have room in a line of it: in usual fonts one is little more than half its size wide. */
const letters = Math.floor((width - 2 * edge) / (0.54 * text));

/** Blue of the palette of M. Okabe and K. Ito for the colour-blind (2008); a shade of it tells the third term. */
const blue = "#0072b2";

/** A trade-off as an SVG document: axes with units, each point with its number, and all of them as a list below. */
export function tradeSvg(trade: TradeOff): string {
  const head = [...wrap(printable(headline(trade)), letters), ...wrap(certainty(trade), letters)];
  const top = edge + 2.6 * text + head.length * line + 1.5 * text;
  const bottom = top + box.height;
  const list = listMarkup(trade, bottom + 5 * text);
  const height = Math.ceil(list.bottom + edge);
  const { title } = trade.best.fit.garment;
  const { markup } = element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width,
      height,
      viewBox: `0 0 ${width} ${height}`,
      "font-family": "sans-serif",
      role: "img",
      "aria-labelledby": "title description",
    },
    element("title", { id: "title" }, printable(`${title}: ${headline(trade)}`)),
    element("desc", { id: "description" }, description(trade)),
    element("rect", { width, height, fill: ink.white }),
    group({ class: "heading" }, [
      label(title, { x: edge, y: edge + 0.8 * text }, { size: 1.5 * text, bold: true }),
      ...head.map((words, index) =>
        label(words, { x: edge, y: edge + 2.6 * text + index * line }, { size: text }),
      ),
    ]),
    plotMarkup(trade, top, bottom),
    list.markup,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n${markup}\n`;
}

/** The whole picture as sentences. */
const description = (trade: TradeOff): string =>
  printable(
    [
      certainty(trade),
      ...trade.points.map(
        (point, at) => `${at + 1}: ${pointSentence(trade, point)}; ${pointWords(trade, point, at)}.`,
      ),
      ...(trade.bestAt === undefined ? [`Best fit: ${pointSentence(trade, trade.best)}.`] : []),
    ].join(" "),
  );

const pointSentence = ({ terms }: TradeOff, { amounts, fit }: TradePoint): string =>
  `${terms.map((term, at) => `${termName(term)} ${amountWords(term, amounts[at]!)}`).join(", ")}; cost ${fit.cost.toFixed(3)}`;

interface Axes {
  readonly x: (amount: number) => number;
  readonly y: (amount: number) => number;
  readonly across: readonly number[];
  readonly up: readonly number[];
}

function plotMarkup(trade: TradeOff, top: number, bottom: number): Markup {
  const marked = [...trade.points, ...(trade.bestAt === undefined ? [trade.best] : [])];
  const [first, second, third] = trade.terms;
  const axes = axesFor(marked, top, bottom);
  const at = ({ amounts }: TradePoint): Pixel => ({ x: axes.x(amounts[0]!), y: axes.y(amounts[1]!) });
  const places = trade.points.map(at);
  return group({ class: "plot" }, [
    gridMarkup(axes, top, bottom),
    label(
      `${termName(first!)} (${unitName(first!)})`,
      { x: (box.left + box.right) / 2, y: bottom + 2.9 * text },
      { size: text, anchor: "middle", bold: true },
    ),
    label(
      `${termName(second!)} (${unitName(second!)})`,
      { x: edge + 0.5 * text, y: (top + bottom) / 2 },
      { size: text, anchor: "middle", bold: true, turned: -90 },
    ),
    third === undefined ? stairsMarkup(places, top) : nothing,
    ...(trade.bestAt === undefined ? [besideMarkup(at(trade.best))] : []),
    ...trade.points.map((point, index) =>
      element(
        "g",
        { class: "point" },
        element("title", {}, printable(`${index + 1}: ${pointSentence(trade, point)}`)),
        element("circle", {
          cx: places[index]!.x,
          cy: places[index]!.y,
          r: dot,
          fill: third === undefined ? blue : shade(trade, point),
          stroke: ink.black,
          "stroke-width": index === trade.bestAt ? 3 : 1,
        }),
      ),
    ),
    ...pointLabels(
      [
        ...spotsOf(places).map((indices) => ({
          at: places[indices[0]!]!,
          words: indices
            .map((index) => `${index + 1}${index === trade.bestAt ? " best fit" : ""}`)
            .join(", "),
        })),
        ...(trade.bestAt === undefined ? [{ at: at(trade.best), words: "best fit" }] : []),
      ],
      { left: box.left, right: width, dot, text },
    ),
  ]);
}

/** Points that fall on one spot, together. */
function spotsOf(places: readonly Pixel[]): readonly (readonly number[])[] {
  const spots = new Map<string, number[]>();
  places.forEach(({ x, y }, index) => {
    const spot = `${Math.round(x / dot)} ${Math.round(y / dot)}`;
    spots.set(spot, [...(spots.get(spot) ?? []), index]);
  });
  return [...spots.values()];
}

function axesFor(points: readonly TradePoint[], top: number, bottom: number): Axes {
  const along = (term: number) => {
    const amounts = points.map(({ amounts }) => amounts[term]!);
    return ticks(Math.min(...amounts), Math.max(...amounts), amounts.every(Number.isInteger) ? 1 : 0);
  };
  const [across, up] = [along(0), along(1)];
  const place = (all: readonly number[], from: number, to: number) => (amount: number) =>
    from + ((amount - all[0]!) / (all.at(-1)! - all[0]!)) * (to - from);
  return { x: place(across, box.left, box.right), y: place(up, bottom, top), across, up };
}

function gridMarkup({ x, y, across, up }: Axes, top: number, bottom: number): Markup {
  const rule = (x1: number, y1: number, x2: number, y2: number, stroke: string): Markup =>
    element("line", { x1, y1, x2, y2, stroke });
  return group({ class: "axes" }, [
    ...across.map((tick) => rule(x(tick), top, x(tick), bottom, ink.faint)),
    ...up.map((tick) => rule(box.left, y(tick), box.right, y(tick), ink.faint)),
    rule(box.left, bottom, box.right, bottom, ink.black),
    rule(box.left, top, box.left, bottom, ink.black),
    ...across.map((tick) =>
      label(amountText(tick), { x: x(tick), y: bottom + 1.2 * text }, { size: text, anchor: "middle" }),
    ),
    ...up.map((tick) =>
      label(amountText(tick), { x: box.left - 0.6 * text, y: y(tick) }, { size: text, anchor: "end" }),
    ),
  ]);
}

/** The line that no fit lies below: from each point to the right, and down to the next. */
function stairsMarkup(places: readonly Pixel[], top: number): Markup {
  const [first] = places;
  if (!first) return nothing;
  const corners = places.flatMap((place, index) => {
    const next = places[index + 1];
    return [place, { x: next?.x ?? box.right, y: place.y }];
  });
  return element("polyline", {
    class: "frontier",
    points: pointList([{ x: first.x, y: top }, ...corners]),
    fill: "none",
    stroke: blue,
    "stroke-width": 2,
  });
}

const besideMarkup = ({ x, y }: Pixel): Markup =>
  element(
    "g",
    { class: "best" },
    element("title", {}, "the best fit"),
    element("path", {
      d: `M ${x} ${y - dot - 2} l ${dot + 2} ${dot + 2} l ${-dot - 2} ${dot + 2} l ${-dot - 2} ${-dot - 2} z`,
      fill: ink.white,
      stroke: ink.black,
      "stroke-width": 1.5,
    }),
  );

/** The more of the third term, the darker. */
function shade({ points }: TradeOff, { amounts }: TradePoint): string {
  const thirds = points.map((one) => one.amounts[2]!);
  const [least, most] = [Math.min(...thirds), Math.max(...thirds)];
  const share = most > least ? (amounts[2]! - least) / (most - least) : 0;
  return `hsl(203, 100%, ${Math.round(92 - 62 * share)}%)`;
}

/** Every point with its amounts and how its fit differs from the best. */
function listMarkup(trade: TradeOff, top: number): { readonly markup: Markup; readonly bottom: number } {
  const beside = besideWords(trade);
  const lines = [
    ...keyLines(trade),
    ...trade.points.flatMap((point, at) =>
      wrap(`${at + 1}  ${pointSentence(trade, point)}: ${pointWords(trade, point, at)}`, letters, 4),
    ),
    ...(beside === undefined ? [] : wrap(`best  ${pointSentence(trade, trade.best)}: ${beside}`, letters, 4)),
    ...wrap(oneOfAll, letters),
  ];
  return {
    bottom: top + lines.length * line,
    markup: group(
      { class: "points" },
      lines.map((words, index) =>
        element(
          "text",
          { x: edge + indentOf(words), y: top + index * line, "font-size": text },
          printable(words.trimStart()),
        ),
      ),
    ),
  };
}

const indentOf = (words: string): number => (words.length - words.trimStart().length) * 0.5 * text;

function keyLines({ terms, points }: TradeOff): readonly string[] {
  const third: TradeTerm | undefined = terms[2];
  if (!third) return [];
  const amounts = points.map(({ amounts: [, , amount] }) => amount!);
  const [least, most] = [Math.min(...amounts), Math.max(...amounts)];
  return [
    `The darker a point, the more it gives up in ${termName(third)}: from ${amountText(least)} to ${amountWords(third, most)}.`,
    "",
  ];
}
