import type { GaugeOff } from "../cloth/gauge-uncertainty.ts";
import { roundTo } from "./rounding.ts";
import { listed } from "./words.ts";

/** "2 %" where all counts are as sure, else "1.14 % in stitches, 0.81 % in rows and 1.32 % in the cord". */
export function offWords({ stitches, rows, cord }: GaugeOff, share = 1): string {
  const percent = (off: number): string => `${roundTo(100 * share * off, 2)} %`;
  if (stitches === rows && (cord === undefined || cord === rows)) return percent(stitches);
  return listed([
    `${percent(stitches)} in stitches`,
    `${percent(rows)} in rows`,
    ...(cord === undefined ? [] : [`${percent(cord)} in the cord`]),
  ]);
}
