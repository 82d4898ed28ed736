import type { Share } from "../../garment/garment.ts";
import type { FittedSize } from "../range-result.ts";
import type { TableLine } from "./line.ts";
import { lookLines } from "./look-lines.ts";
import { pieceLines } from "./piece-lines.ts";
import { placementLines } from "./placement-lines.ts";
import { totalLines } from "./total-lines.ts";

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
