import type { FittedPart, FittedPlacement } from "../fit/fit.ts";
import { counted, listed } from "./words.ts";

/** What is done above the last whole repeat: "is left unfinished: 3 hangings of repeat 9, to row 118"; nothing where it ends the field. */
export function partWords({
  part,
  repeats,
  lastRow,
  margins,
  sections,
}: FittedPlacement): string | undefined {
  const what = sections[0]?.look.motif.kind === "cable" ? "crossing" : "hanging";
  if (part) {
    // Room for all rows of the repeat may be left where fewer repeats were chosen.
    const verb = part.rows >= sections.at(-1)!.look.trace.repeatRows ? "goes on with" : "is left unfinished:";
    return `${verb} ${amountOf(part, what)} of repeat ${repeats + 1}, to row ${part.lastRow}`;
  }
  if (margins.top === 0) return undefined;
  const highest = lastRow + margins.top;
  return margins.top === 1
    ? `row ${highest} above the last whole repeat stays plain`
    : `rows ${lastRow + 1} to ${highest} above the last whole repeat stay plain`;
}

/** How many hangings or crossings a part has, by column from the left. */
export const madeByColumn = ({ columns }: FittedPart): readonly number[] =>
  columns.map((more) => Object.values(more).reduce((sum, count) => sum + count, 0));

function amountOf(part: FittedPart, what: string): string {
  const made = madeByColumn(part);
  const [first] = made;
  if (first === undefined) return counted(part.rows, "row");
  if (made.length === 1) return counted(first, what);
  return made.every((one) => one === first)
    ? `${counted(first, what)} in each column`
    : listed(made.map((one, column) => `${counted(one, what)} in column ${column + 1}`));
}
