import { needleCount } from "../cloth/bed.ts";
import { needlesAt, rowOf } from "../cloth/counted-piece.ts";
import { groundStitch } from "../cloth/gauge.ts";
import { prepareCord } from "../cord/preparation.ts";
import { type Fit, type FittedPlacement, lookOf, pieceOf } from "../fit/fit.ts";
import type { Share } from "../garment/garment.ts";
import { growingQuantity } from "../motif/growing-quantity.ts";
import { roundTo, roundUpTo } from "../report/rounding.ts";
import { estimateYarn, type YarnNeed } from "../yarn/estimate.ts";
import type { FittedSize } from "./range-result.ts";
import { sharedLook } from "./shared-look.ts";

/** What a pattern prints of all sizes: quantity by quantity, with a number for each size. */
export type Table = readonly TablePart[];

/** Lines about one thing: a piece, a motif on it, a motif's look as far as each size has its own, or the whole garment. */
export interface TablePart {
  readonly piece?: string;
  readonly motif?: string;
  /** Index among the garment's placements. */
  readonly placement?: number;
  readonly lines: readonly TableLine[];
}

export interface TableLine {
  readonly quantity: string;
  readonly unit: string;
  /** In the order of the sizes; missing where a size has no such thing. */
  readonly values: readonly (number | undefined)[];
  /** A difference, told with its sign. */
  readonly signed?: boolean;
}

/** The table of sizes that are fitted; whatever they share is left out. */
export function tableOf(sizes: readonly FittedSize[], share: Share | undefined): Table {
  const fits = sizes.map(({ fit }) => fit);
  const { looks = [], placements = [], pieces = [] } = fits[0] ?? {};
  const parts: TablePart[] = [
    ...looks.map(({ motif: { name } }) => ({ motif: name, lines: lookLines(fits, name, share) })),
    ...pieces.flatMap(({ name }): TablePart[] => [
      { piece: name, lines: pieceLines(fits, name) },
      ...placements
        .filter(({ piece }) => piece === name)
        .map(({ index, motif }) => ({
          piece: name,
          motif,
          placement: index,
          lines: placementLines(fits, index),
        })),
    ]),
    { lines: totalLines(fits) },
  ];
  return parts.filter(({ lines }) => lines.length > 0);
}

type Reading = (fit: Fit) => number | undefined;

/** A line with a number for each size; none where no size has one. */
function line(
  fits: readonly Fit[],
  quantity: string,
  unit: string,
  read: Reading,
  signed = false,
): readonly TableLine[] {
  const values = fits.map(read);
  return values.every((value) => value === undefined)
    ? []
    : [{ quantity, unit, values, ...(signed && { signed }) }];
}

/** A line that tells nothing where every size has 0 of it. */
const unlessNone = (lines: readonly TableLine[]): readonly TableLine[] =>
  lines.filter(({ values }) => values.some((value) => value !== undefined && value !== 0));

/** Quantities and counts of a motif that each size has its own of. */
function lookLines(fits: readonly Fit[], name: string, share: Share | undefined): readonly TableLine[] {
  const { motif } = lookOf(fits[0]!, name);
  const shared = sharedLook(share, lookOf(fits[0]!, name));
  const growing = growingQuantity(motif);
  const quantities = motif.quantities.filter((one) => one !== growing && !shared?.values.has(one.name));
  const counts = growing || shared?.segments ? [] : stretchesIn(fits, name);
  return [
    ...quantities.flatMap((one) =>
      line(fits, one.name, one.unit, (fit) => lookOf(fit, name).values.get(one.name)),
    ),
    ...counts.flatMap((stretch) =>
      line(
        fits,
        `${stretch} count`,
        "cord stitches",
        (fit) => lookOf(fit, name).segments.find((one) => one.name === stretch)?.pickup,
      ),
    ),
  ];
}

const stretchesIn = (fits: readonly Fit[], motif: string): readonly string[] => [
  ...new Set(fits.flatMap((fit) => lookOf(fit, motif).segments.map(({ name }) => name))),
];

function pieceLines(fits: readonly Fit[], name: string): readonly TableLine[] {
  const planned = (fit: Fit): number => {
    const { outline } = fit.garment.pieces.find((piece) => piece.name === name)!;
    return rowOf(outline.at(-1)!.heightMm, groundStitch(fit.garment.gauge));
  };
  return [
    ...line(fits, "needles to cast on", "needles", (fit) => needleCount(needlesAt(pieceOf(fit, name), 0))),
    ...line(fits, "rows", "rows", (fit) => pieceOf(fit, name).rows),
    ...unlessNone(
      line(fits, "change of length", "rows", (fit) => pieceOf(fit, name).rows - planned(fit), true),
    ),
  ];
}

function placementLines(fits: readonly Fit[], index: number): readonly TableLine[] {
  const of =
    (read: (placement: FittedPlacement, fit: Fit) => number | undefined): Reading =>
    (fit) => {
      const placement = fit.placements.find((one) => one.index === index);
      return placement && read(placement, fit);
    };
  const severalColumns = fits.some((fit) => fit.placements[index]!.columns > 1);
  const growing = growingQuantity(lookOf(fits[0]!, fits[0]!.placements[index]!.motif).motif);
  const grown = (at: 0 | -1): Reading =>
    of(({ sections }) => sections.at(at)!.look.values.get(growing!.name));
  const cord = (read: (cord: NonNullable<ReturnType<typeof prepareCord>>) => number): Reading =>
    of((placement, fit) => {
      const prepared = prepareCord(fit, placement);
      return prepared && read(prepared);
    });
  return [
    ...line(
      fits,
      "repeats",
      "repeats",
      of(({ repeats }) => repeats),
    ),
    ...(growing
      ? [
          ...line(fits, `${growing.name} at the beginning`, growing.unit, grown(0)),
          ...line(fits, `${growing.name} at the end`, growing.unit, grown(-1)),
        ]
      : []),
    ...(severalColumns
      ? [
          ...line(
            fits,
            "columns",
            "columns",
            of(({ columns }) => columns),
          ),
          ...line(
            fits,
            "gap",
            "needles",
            of(({ gap }) => gap),
          ),
        ]
      : []),
    ...line(
      fits,
      "first row",
      "row",
      of(({ firstRow }) => firstRow),
    ),
    ...line(
      fits,
      "last row",
      "row",
      of(({ lastRow }) => lastRow),
    ),
    ...unlessNone(
      line(
        fits,
        "rows of an unfinished repeat",
        "rows",
        of(({ part }) => part?.rows),
      ),
    ),
    ...line(
      fits,
      "margin below",
      "rows",
      of(({ margins }) => margins.bottom),
    ),
    ...line(
      fits,
      "margin above",
      "rows",
      of(({ margins }) => margins.top),
    ),
    ...line(
      fits,
      "margin at the left",
      "needles",
      of(({ margins }) => margins.left),
    ),
    ...line(
      fits,
      "margin at the right",
      "needles",
      of(({ margins }) => margins.right),
    ),
    ...line(
      fits,
      "cord to make",
      "cord stitches",
      cord(({ make }) => make),
    ),
    ...line(
      fits,
      "passes for it",
      "passes",
      cord(({ passes }) => passes),
    ),
    ...line(
      fits,
      "its length",
      "cm",
      cord(({ lengthMm }) => roundTo(lengthMm / 10, 1)),
    ),
  ];
}

/** Cord of the whole garment where several motifs need some, and the yarn to have at hand where the file tells of yarn. */
function totalLines(fits: readonly Fit[]): readonly TableLine[] {
  const cords = (fit: Fit) => fit.placements.flatMap((placement) => prepareCord(fit, placement) ?? []);
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  const several = fits.some((fit) => cords(fit).length > 1);
  const estimates = new Map(fits.map((fit) => [fit, estimateYarn(fit)]));
  const yarn = (whose: "ground" | "cord"): readonly TableLine[] => {
    if (!fits.some((fit) => fit.garment.yarn[whose])) return [];
    const amount =
      (unit: keyof YarnNeed["atHand"]): Reading =>
      (fit) => {
        const needed = estimates.get(fit)![whose]?.atHand[unit];
        return needed === undefined ? undefined : roundUpTo(needed, 0);
      };
    return [
      ...line(fits, `${whose} yarn at hand`, "g", amount("grams")),
      ...line(fits, `${whose} yarn at hand`, "m", amount("metres")),
    ];
  };
  return [
    ...(several
      ? [
          ...line(fits, "cord to make", "cord stitches", (fit) => sum(cords(fit).map(({ make }) => make))),
          ...line(fits, "its length", "m", (fit) =>
            roundUpTo(sum(cords(fit).map(({ lengthMm }) => lengthMm)) / 1000, 2),
          ),
        ]
      : []),
    ...yarn("ground"),
    ...yarn("cord"),
  ];
}

/**
 * The numbers of a line as patterns print them: the first size's, and the others' in parentheses; one number where all
 * are alike. A size that has no such thing has a dash.
 */
export function printed({ values, signed }: Pick<TableLine, "values" | "signed">): string {
  const shown = values.map((value) =>
    value === undefined ? "-" : signed && value > 0 ? `+${value}` : String(value),
  );
  const [first, ...others] = shown;
  return others.every((one) => one === first) ? first! : `${first} (${others.join(", ")})`;
}
