import { type Cursor, flagAt, type Reading } from "./cursor.ts";
import * as limits from "./limits.ts";
import { percentageAt } from "./numbers.ts";

/** The share of the gauge's range over which a fit has to hold: true is all of it, false and nothing none. */
export function steadyAt(reading: Reading, cursor: Cursor | undefined): number | undefined {
  if (cursor?.written.kind === "text" || cursor?.written.kind === "number")
    return percentageAt(reading, cursor, "the share of the gauge's range", limits.steadyShare);
  return flagAt(reading, cursor, "whether a fit has to be steady") ? 1 : undefined;
}
