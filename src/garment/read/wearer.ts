import type { Wearer } from "../garment.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, type Reading, tableAt } from "./cursor.ts";
import * as limits from "./limits.ts";
import { ageAt, lengthAt } from "./numbers.ts";

/** Who will wear the garment; a wearer of whom nothing is said is as good as none. */
export function wearerAt(reading: Reading, cursor: Cursor): Wearer | undefined {
  const table = tableAt(reading, cursor, "the wearer", keysOf("wearer"), "{ age: 5, height: 110 cm }");
  const ageCursor = table?.at("age");
  const ageYears = ageCursor && ageAt(reading, ageCursor, "the wearer's age", limits.ageYears);
  const heightCursor = table?.at("height");
  const heightMm = heightCursor && lengthAt(reading, heightCursor, "the wearer's height", limits.wearerMm);
  if (ageYears === undefined && heightMm === undefined) return undefined;
  return {
    path: cursor.path,
    ...(ageYears !== undefined && { ageYears }),
    ...(heightMm !== undefined && { heightMm }),
  };
}
