import type { Fit, FittedPlacement } from "../../fit/fit.ts";
import type { Action, SheetRow } from "../sheet.ts";

/** Where in their repeats the motifs worked on a row are. */
export type RunningRow = (row: SheetRow) => readonly string[];

/** A motif is named where the piece has several placements. */
export function runningRows(fit: Fit, piece: string): RunningRow {
  const placements = fit.placements.filter((placement) => placement.piece === piece);
  const told = placements.map((placement) => ({
    number: placement.index + 1,
    name: placements.length > 1 ? `${placement.motif}: ` : "",
    placeOf: placeInRepeats(placement),
  }));
  return ({ row, do: actions }) => {
    const worked = new Set(actions.map(placementOf));
    return told
      .filter(({ number }) => worked.has(number))
      .map(({ name, placeOf }) => `${name}${placeOf(row)}`);
  };
}

/** A pattern knitted all over its rows names its repeats itself, where each begins. */
const placementOf = (action: Action): number | undefined =>
  "placement" in action && action.act !== "pattern" && action.act !== "plain" ? action.placement : undefined;

function placeInRepeats({ sections, firstRow, repeats }: FittedPlacement): (row: number) => string {
  const lead = sections[0]!.look.trace.leadRows;
  // Repeats are counted on over all sections, since the knitter sees one motif.
  const rowsOfRepeats = sections.flatMap(({ look, repeats: times }) =>
    Array.from({ length: times }, () => look.trace.repeatRows),
  );
  return (row) => {
    let into = row - firstRow;
    if (into === 0) return "start of the motif";
    if (into <= lead) return `lead-in, row ${into} of ${lead}`;
    into -= lead;
    let done = 0;
    while (done < rowsOfRepeats.length - 1 && into > rowsOfRepeats[done]!) into -= rowsOfRepeats[done++]!;
    const rows = rowsOfRepeats[done]!;
    if (into > rows) return `unfinished repeat ${repeats + 1}, row ${into - rows} of ${rows}`;
    return `repeat ${done + 1} of ${repeats}, row ${into} of ${rows}`;
  };
}
