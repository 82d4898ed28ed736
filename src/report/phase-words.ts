import { type Fit, type FittedPlacement, pieceOf } from "../fit/fit.ts";
import { rowsIntoRepeat } from "../fit/phase.ts";
import { counted, listed } from "./words.ts";

/** How a placement's motif stands at the marks that it meets, or at which it matches other pieces, a line for each. */
export function phaseWords(fit: Fit, placement: FittedPlacement): readonly string[] {
  const { placements, matches } = fit.garment;
  return [
    ...placements[placement.index]!.meet.map(
      ({ mark }) => `at ${mark} it is ${standing(fit, placement, mark)}`,
    ),
    ...matches
      .filter((match) => match.placements.includes(placement.index))
      .map(({ mark, placements: alike }) => {
        const pieces = alike.map((index) => placements[index]!.piece);
        return `at ${mark} it is ${standing(fit, placement, mark)}, alike on ${listed(pieces)}`;
      }),
  ];
}

/** The motif is thought on below and above itself, as it is counted for the rule. */
function standing(fit: Fit, { piece, firstRow, sections }: FittedPlacement, mark: string): string {
  const { leadRows, repeatRows } = sections[0]!.look.trace;
  const rows = pieceOf(fit, piece).marks.get(mark)! - firstRow - leadRows;
  const into = rowsIntoRepeat(rows, repeatRows);
  return into === 0 ? "whole" : `${counted(into, "row")} into a repeat of ${repeatRows}`;
}
