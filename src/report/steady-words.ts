import { roundTo } from "./rounding.ts";
import { listed } from "./words.ts";

/** How far off each count may be, as fractions; no cord where none is measured. */
export interface OffBy {
  readonly stitches: number;
  readonly rows: number;
  readonly cord?: number;
}

/** "2 %" where all counts are as sure, else "1.1 % in stitches, 0.8 % in rows and 1.3 % in the cord". */
export function offWords({ stitches, rows, cord }: OffBy, share: number): string {
  const percent = (off: number): string => `${roundTo(100 * share * off, 2)} %`;
  if (stitches === rows && (cord === undefined || cord === rows)) return percent(stitches);
  return listed([
    `${percent(stitches)} in stitches`,
    `${percent(rows)} in rows`,
    ...(cord === undefined ? [] : [`${percent(cord)} in the cord`]),
  ]);
}
