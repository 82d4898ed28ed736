import { listed } from "../report/words.ts";
import { wrap } from "../report/wrap.ts";
import type { TradeOff, TradePoint } from "./trade.ts";
import { amountText, termName, unitName } from "./words.ts";

/** How a plot is drawn with letters: in so many columns and, where they are nine or more, rows, its legend included. */
export interface PlotOptions {
  readonly columns: number;
  readonly rows: number;
  /** Whether more than ASCII may be used. */
  readonly unicode: boolean;
}

interface Lines {
  readonly level: string;
  readonly upright: string;
  /** From the left and down. */
  readonly turn: string;
  readonly corner: string;
}

const unicodeLines: Lines = { level: "─", upright: "│", turn: "┐", corner: "└" };
const asciiLines: Lines = { level: "-", upright: "|", turn: "+", corner: "+" };

/** What stands for a point: 1 to 9, then a to z. */
export const markOf = (index: number): string =>
  index < 9 ? String(index + 1) : index < 35 ? String.fromCodePoint(97 + index - 9) : "o";

export const bestBeside = "*";
/** Columns right of the last point and rows above the first one, in which the step line runs on. */
const runOn = 3;

/**
 * The points over the first term to the right and the second one upward, by their marks in the list, and with two terms
 * the step line that no fit lies below. Of those that fall on one spot the first is drawn, and the others are told.
 */
export function plot(trade: TradeOff, options: PlotOptions): readonly string[] {
  const { columns, rows, unicode } = options;
  const [across, up, third] = trade.terms;
  const marked = [...trade.points, ...(trade.bestAt === undefined ? [trade.best] : [])];
  const labels = marked.map(({ amounts }) => amountText(amounts[1]!));
  const left = Math.max(...labels.map((label) => label.length)) + 1;
  const width = Math.max(16, columns - left - 1);
  const below = legend(trade).flatMap((words) => wrap(words, columns));
  const { height, x, y, places, crowded } = laidOut(trade, marked, width, rows - 4 - below.length, columns);
  const lines = unicode ? unicodeLines : asciiLines;
  const cells = Array.from({ length: height }, () => new Array<string>(width).fill(" "));
  const put = (column: number, row: number, mark: string): void => {
    cells[height - 1 - row]![column] = mark;
  };

  if (third === undefined && places.length > 0) stairs(places, width, height, lines, put);
  if (trade.bestAt === undefined) put(x(trade.best.amounts[0]!), y(trade.best.amounts[1]!), bestBeside);
  for (const [index, [column, row]] of [...places.entries()].toReversed()) put(column, row, markOf(index));

  const rowLabels = new Map<number, string>();
  marked.forEach(({ amounts }, index) => {
    const row = y(amounts[1]!);
    if (!rowLabels.has(row)) rowLabels.set(row, labels[index]!);
  });
  return [
    `${termName(up!)} (${unitName(up!)})`,
    ...cells.map((row, index) => {
      const label = rowLabels.get(height - 1 - index) ?? "";
      return `${label.padStart(left - 1)} ${lines.upright}${row.join("")}`.trimEnd();
    }),
    `${" ".repeat(left)}${lines.corner}${lines.level.repeat(width)}`,
    `${" ".repeat(left + 1)}${columnLabels(
      marked.map(({ amounts }) => [x(amounts[0]!), amountText(amounts[0]!)]),
      width,
    )}`.trimEnd(),
    `${termName(across!)} (${unitName(across!)})`.padStart(left + 1 + width),
    ...below,
    ...crowded,
  ];
}

type Place = readonly [column: number, row: number];

interface Layout {
  readonly height: number;
  readonly x: (amount: number) => number;
  readonly y: (amount: number) => number;
  readonly places: readonly Place[];
  /** Lines that tell which points fall on one spot. */
  readonly crowded: readonly string[];
}

/** No more of what there is to say than this takes from the plot. */
const mostCrowdedLines = 3;

/** Where everything stands; the lines that tell of crowded spots take rows from the plot, and so may crowd it more. */
function laidOut(
  { points }: TradeOff,
  marked: readonly TradePoint[],
  width: number,
  rows: number,
  columns: number,
): Layout {
  const x = scale(
    marked.map(({ amounts }) => amounts[0]!),
    width - 1 - runOn,
    1,
  );
  for (let kept = 0; ; kept++) {
    const height = Math.max(5, rows - kept);
    const y = scale(
      marked.map(({ amounts }) => amounts[1]!),
      height - 2,
      0,
    );
    const places = points.map(({ amounts }): Place => [x(amounts[0]!), y(amounts[1]!)]);
    const words = crowdedWords(places);
    const told = words === undefined ? [] : wrap(words, columns);
    if (told.length > kept && kept < mostCrowdedLines) continue;
    const crowded = told.length > kept ? [...told.slice(0, kept - 1), "..."] : told;
    return {
      height,
      x,
      y,
      places,
      crowded: [...crowded, ...new Array<string>(kept - crowded.length).fill("")],
    };
  }
}

/** "On one spot: 2 and 3; 5, 6 and 7." */
function crowdedWords(places: readonly Place[]): string | undefined {
  const spots = new Map<string, number[]>();
  places.forEach((place, index) => {
    const spot = place.join(" ");
    spots.set(spot, [...(spots.get(spot) ?? []), index]);
  });
  const shared = [...spots.values()].filter(({ length }) => length > 1);
  return shared.length === 0
    ? undefined
    : `On one spot, the first drawn: ${shared.map((indices) => listed(indices.map(markOf))).join("; ")}.`;
}

/** Amounts to whole places from `first` on; all alike stand at the first. */
function scale(amounts: readonly number[], last: number, first: number): (amount: number) => number {
  const least = Math.min(...amounts);
  const most = Math.max(...amounts);
  return (amount) =>
    most === least ? first : first + Math.round(((amount - least) / (most - least)) * (last - first));
}

function stairs(
  places: readonly Place[],
  width: number,
  height: number,
  { level, upright, turn }: Lines,
  put: (column: number, row: number, mark: string) => void,
): void {
  const [first] = places;
  for (let row = first![1] + 1; row < height; row++) put(first![0], row, upright);
  places.forEach(([column, row], index) => {
    const next = places[index + 1];
    for (let at = column + 1; at < (next?.[0] ?? width); at++) put(at, row, level);
    if (!next) return;
    put(next[0], row, turn);
    for (let at = row - 1; at > next[1]; at--) put(next[0], at, upright);
  });
}

/** As many labels below their places as have room, from the left. */
function columnLabels(labels: readonly (readonly [column: number, text: string])[], width: number): string {
  let text = "";
  for (const [column, label] of [...labels].sort(([a], [b]) => a - b)) {
    const from = Math.max(0, Math.min(column - Math.floor(label.length / 2), width - label.length));
    if (from < text.length + (text === "" ? 0 : 1)) continue;
    text = text.padEnd(from) + label;
  }
  return text;
}

function legend({ points, terms, bestAt }: TradeOff): readonly string[] {
  const third = terms[2];
  const amounts = third ? points.map(({ amounts: [, , amount] }) => amount!) : [];
  const [least, most] = [Math.min(...amounts), Math.max(...amounts)].map(amountText);
  return [
    ...(third
      ? [
          least === most
            ? `All have ${least} ${unitName(third)} of ${termName(third)}.`
            : `Points as in the list, which tells ${termName(third)} (${unitName(third)}) of each: ${least} to ${most}.`,
        ]
      : []),
    ...(bestAt === undefined ? [`${bestBeside} is the best fit.`] : []),
  ];
}
