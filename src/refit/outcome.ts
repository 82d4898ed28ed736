import type { Progress, Reading } from "./progress.ts";
import type { Refitted } from "./refit.ts";

/** Where a piece and its marks come once its rest is knitted as it was fitted anew, at the measured gauge. */
export type Outcome = Pick<Progress, "length" | "marks">;

/** Lengths from the cast-on edge in mm: rows of the new fit by the height of a row as it was measured. */
export function outcomeOf({ fit, progress }: Pick<Refitted, "fit" | "progress">): Outcome {
  const piece = fit.pieces.find(({ name }) => name === progress.piece)!;
  const { rowHeight } = progress;
  const at = (rows: number, plannedMm: number): Reading => ({
    mm: rows * rowHeight.mm,
    withinMm: rows * rowHeight.withinMm,
    plannedMm,
  });
  return {
    length: at(piece.rows, progress.length.plannedMm),
    marks: progress.marks.map(({ name, plannedMm }) => {
      const row = piece.marks.get(name)!;
      return { name, row, ...at(row, plannedMm) };
    }),
  };
}
