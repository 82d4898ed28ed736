import { type CordPreparation, prepareCord } from "../../cord/preparation.ts";
import { type Fit, type FittedPlacement, lookOf } from "../../fit/fit.ts";
import { type GrowingQuantity, growingQuantity } from "../../motif/growing-quantity.ts";
import { roundUpTo } from "../../report/rounding.ts";
import { line, type TableLine, unlessNone } from "./line.ts";

type Quantity = readonly [
  quantity: string,
  unit: string,
  read: (placement: FittedPlacement, cord: CordPreparation | undefined) => number | undefined,
];

const repeats: Quantity = ["repeats", "repeats", (placement) => placement.repeats];

const growth = ({ name, unit }: GrowingQuantity): readonly Quantity[] => [
  [`${name} at the beginning`, unit, ({ sections }) => sections[0]!.look.values.get(name)],
  [`${name} at the end`, unit, ({ sections }) => sections.at(-1)!.look.values.get(name)],
];

const columns: readonly Quantity[] = [
  ["columns", "columns", (placement) => placement.columns],
  ["gap", "needles", ({ gap }) => gap],
];

const rows: readonly Quantity[] = [
  ["first row", "row", ({ firstRow }) => firstRow],
  ["last row", "row", ({ lastRow }) => lastRow],
];

const unfinished: Quantity = ["rows of an unfinished repeat", "rows", ({ part }) => part?.rows];

const margins: readonly Quantity[] = [
  ["margin below", "rows", (placement) => placement.margins.bottom],
  ["margin above", "rows", (placement) => placement.margins.top],
  ["margin at the left", "needles", (placement) => placement.margins.left],
  ["margin at the right", "needles", (placement) => placement.margins.right],
];

const cords: readonly Quantity[] = [
  ["cord stitches to make", "cord stitches", (_, cord) => cord?.make],
  ["passes for them", "passes", (_, cord) => cord?.passes],
  ["length of the cord", "cm", (_, cord) => cord && roundUpTo(cord.lengthMm / 10, 1)],
];

/** How a motif lies on a piece, and the cord to make for it. */
export function placementLines(fits: readonly Fit[], index: number): readonly TableLine[] {
  const placed = fits.map((fit) => fit.placements.find((one) => one.index === index)!);
  const growing = growingQuantity(lookOf(fits[0]!, placed[0]!.motif).motif);
  const lineOf = ([quantity, unit, read]: Quantity): readonly TableLine[] =>
    line(fits, quantity, unit, (fit) => {
      const placement = placed[fits.indexOf(fit)]!;
      return read(placement, prepareCord(fit, placement));
    });
  return [
    ...lineOf(repeats),
    ...(growing ? growth(growing).flatMap(lineOf) : []),
    ...(placed.some((one) => one.columns > 1) ? columns.flatMap(lineOf) : []),
    ...rows.flatMap(lineOf),
    ...unlessNone(lineOf(unfinished)),
    ...[...margins, ...cords].flatMap(lineOf),
  ];
}
