import type { PatternAction, SheetPiece } from "../../sheet/sheet.ts";
import type { Span } from "./cloth.ts";
import { boundaryBefore } from "./place.ts";

/** One repeat upward of a banded pattern: its repeats side by side, and its edge stitches. */
export interface BandRepeat extends Span {
  readonly motif: string;
  /** Counts from 1 upward. */
  readonly repeat: number;
  readonly fromRow: number;
  readonly toRow: number;
  /** From left to right. */
  readonly tiles: readonly Span[];
  /** Edge stitches, where there are any. */
  readonly edges: readonly Span[];
}

export const bandRepeatsOf = (sheet: SheetPiece): readonly BandRepeat[] =>
  sheet.rows.flatMap(({ row, do: actions }) =>
    actions
      .filter((action): action is PatternAction => action.act === "pattern")
      .map(({ motif, repeat, rows, stitches, across, edge, ...range }): BandRepeat => {
        const [from, to] = [boundaryBefore(range.from), boundaryBefore(range.to) + 1];
        return {
          motif,
          repeat,
          from,
          to,
          fromRow: row,
          toRow: row + rows,
          tiles: Array.from({ length: across }, (_, index) => ({
            from: from + edge.left + index * stitches,
            to: from + edge.left + (index + 1) * stitches,
          })),
          edges: [
            { from, to: from + edge.left },
            { from: to - edge.right, to },
          ].filter((span) => span.from < span.to),
        };
      }),
  );
