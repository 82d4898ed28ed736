import { type Cursor, flagAt, type Reading, report } from "./cursor.ts";
import * as limits from "./limits.ts";
import { percentageAt } from "./numbers.ts";

/** What YAML once took for true and false, and what it is called now. */
const yesOrNo = new Map([
  ...["yes", "on", "y"].map((word) => [word, "true"] as const),
  ...["no", "off", "n"].map((word) => [word, "false"] as const),
]);

/** The share of the gauge's range over which a fit has to hold: true is all of it, false and nothing none. */
export function steadyAt(reading: Reading, cursor: Cursor | undefined): number | undefined {
  const said =
    cursor?.written.kind === "text" ? yesOrNo.get(cursor.written.text.trim().toLowerCase()) : undefined;
  if (cursor && said !== undefined)
    return report(reading, cursor, {
      code: "wrong-type",
      message: "whether a fit has to be steady is said by true or false, or by a share such as 50 %",
      expected: said,
    });
  if (cursor?.written.kind === "text" || cursor?.written.kind === "number")
    return percentageAt(reading, cursor, "the share of the gauge's range", limits.steadyShare);
  return flagAt(reading, cursor, "whether a fit has to be steady") ? 1 : undefined;
}
