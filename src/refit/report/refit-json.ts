import { fitFields, type PlacedRule } from "../../report/fit-json.ts";
import { roundTo } from "../../report/rounding.ts";
import { buildSheet } from "../../sheet/build-sheet.ts";
import { sheetToJson } from "../../sheet/sheet-json.ts";
import type { Obstacles } from "../obstacles.ts";
import { type Outcome, outcomeOf } from "../outcome.ts";
import type { Progress, Reading } from "../progress.ts";
import type { CannotRefit, RefitStopped, Refitted } from "../refit.ts";

/** What stands in the way, each rule with its place in the file. */
export type PlacedObstacles = Omit<Obstacles, "conflict"> & { readonly conflict: readonly PlacedRule[] };

/**
 * The machine-readable form of a refit, format `evenrow-refit/1`. The sheet is the whole piece's, knitted rows first;
 * `from_row` says how many of them are knitted. Lengths are rounded to a hundredth of a millimetre, the height of a row
 * and the width of a stitch to a ten-thousandth.
 *
 * @param obstacles why nothing fits, where that is so
 */
export function refitToJson(
  result: Refitted | CannotRefit | RefitStopped,
  obstacles?: PlacedObstacles,
): object {
  const common = { format: "evenrow-refit/1", status: result.status, ...progressToJson(result.progress) };
  const notes = result.notes.length > 0 && { notes: result.notes };
  switch (result.status) {
    case "refitted":
      return {
        ...common,
        proven: result.proven,
        cost: roundTo(result.fit.cost, 6),
        bound: roundTo(result.bound, 6),
        outcome: outcomeToJson(outcomeOf(result)),
        ...fitFields(result.fit),
        cords: result.cords.map(({ placement, strands, times, made, used, left, isHung }) => ({
          placement: placement + 1,
          strands,
          times,
          made,
          used,
          left,
          hung: isHung,
        })),
        ...(result.unsteady && { unsteady: true }),
        unlike_other_pieces: result.unlike,
        strained: result.strained.map(({ motif, segment, ease }) => ({
          motif,
          segment,
          ease: roundTo(ease, 6),
        })),
        from_row: result.progress.row,
        sheet: sheetToJson(buildSheet(result.fit)),
        nodes: result.nodes,
        ...notes,
      };
    case "does not fit":
      return {
        ...common,
        proven: true,
        ...(obstacles && {
          long_enough: obstacles.isLongEnough,
          conflict: obstacles.conflict.map(({ rule, words, path, place }) => ({
            rule,
            words,
            path,
            ...(place && { line: place.line }),
          })),
          ...(obstacles.rowsMore !== undefined && { rows_more: obstacles.rowsMore }),
          ...(obstacles.rowsFewer !== undefined && { rows_fewer: obstacles.rowsFewer }),
        }),
        nodes: result.nodes,
        ...notes,
      };
    case "stopped":
      return { ...common, proven: false, reason: result.reason, nodes: result.nodes, ...notes };
  }
}

const progressToJson = ({
  piece,
  row,
  measured,
  rowHeight,
  stitchWidth,
  length,
  marks,
}: Progress): object => ({
  piece,
  row,
  measured: {
    ...(measured.lengthMm !== undefined && { length_mm: roundTo(measured.lengthMm, 2) }),
    ...(measured.widthMm !== undefined && { width_mm: roundTo(measured.widthMm, 2) }),
  },
  gauge: { row_mm: readingToJson(rowHeight, 4), stitch_mm: readingToJson(stitchWidth, 4) },
  ends_at_mm: readingToJson(length, 2),
  marks: marks.map(markToJson),
});

const outcomeToJson = ({ length, marks }: Outcome): object => ({
  ends_at_mm: readingToJson(length, 2),
  marks: marks.map(markToJson),
});

const markToJson = (mark: Progress["marks"][number]): object => ({
  name: mark.name,
  row: mark.row,
  at_mm: readingToJson(mark, 2),
});

const readingToJson = ({ mm, withinMm, plannedMm }: Reading, decimals: number): object => ({
  now: roundTo(mm, decimals),
  within: roundTo(withinMm, decimals),
  planned: roundTo(plannedMm, decimals),
});
