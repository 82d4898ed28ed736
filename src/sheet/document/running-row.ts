import { type Fit, type FittedPlacement, lookOf } from "../../fit/fit.ts";
import type { SheetRow } from "../sheet.ts";

/** Where in their repeats the motifs worked on a row are. */
export type RunningRow = (row: SheetRow) => readonly string[];

/** A motif is named where the piece has several placements. */
export function runningRows(fit: Fit, piece: string): RunningRow {
  const placements = fit.placements.filter((placement) => placement.piece === piece);
  const told = placements.map((placement) => ({
    number: placement.index + 1,
    name: placements.length > 1 ? `${placement.motif}: ` : "",
    placeOf: placeInRepeats(fit, placement),
  }));
  return ({ row, do: actions }) => {
    const worked = new Set(actions.map((action) => ("placement" in action ? action.placement : undefined)));
    return told
      .filter(({ number }) => worked.has(number))
      .map(({ name, placeOf }) => `${name}${placeOf(row)}`);
  };
}

function placeInRepeats(fit: Fit, { motif, firstRow, repeats }: FittedPlacement): (row: number) => string {
  const { leadRows, repeatRows } = lookOf(fit, motif).trace;
  return (row) => {
    const into = row - firstRow;
    if (into === 0) return "first row of the motif";
    if (into <= leadRows) return `lead-in, row ${into} of ${leadRows}`;
    const repeat = Math.ceil((into - leadRows) / repeatRows);
    return `repeat ${repeat} of ${repeats}, row ${into - leadRows - (repeat - 1) * repeatRows} of ${repeatRows}`;
  };
}
