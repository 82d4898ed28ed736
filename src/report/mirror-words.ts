import { isMirrored, type Panel } from "../fit/panel.ts";
import { listed } from "./words.ts";

/** "column 2 mirrored", "columns 3 and 4 mirrored"; nothing where none is. */
export function mirrorWords(panel: Panel): string | undefined {
  const columns = mirroredColumns(panel);
  if (columns.length === 0) return undefined;
  return `${columns.length === 1 ? "column" : "columns"} ${listed(columns.map(String))} mirrored`;
}

/** Numbers of the mirrored columns, counted from 1 at the left. */
export const mirroredColumns = (panel: Panel): readonly number[] =>
  panel.centres.flatMap((_, column) => (isMirrored(panel, column) ? [column + 1] : []));
