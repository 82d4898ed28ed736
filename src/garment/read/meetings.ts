import type { Meeting, Phase } from "../garment.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, knownNameAt, listAt, type Reading, report, tableAt, wordAt } from "./cursor.ts";
import * as limits from "./limits.ts";
import { inCm, wholeAt } from "./numbers.ts";
import type { ReadPiece } from "./pieces.ts";

const example = "{ mark: underarm, at: whole }";

/** What a placement has to meet: one meeting or a list of them. */
export function meetingsAt(
  reading: Reading,
  cursor: Cursor | undefined,
  piece: ReadPiece,
  field: { readonly from: string; readonly to: string },
): readonly Meeting[] {
  if (!cursor) return [];
  const items =
    cursor.written.kind === "list" ? listAt(reading, cursor, "what a motif meets", example)! : [cursor];
  return items
    .map((item) => meetingAt(reading, item, piece, field))
    .filter((meeting) => meeting !== undefined);
}

function meetingAt(
  reading: Reading,
  cursor: Cursor,
  piece: ReadPiece,
  { from, to }: { readonly from: string; readonly to: string },
): Meeting | undefined {
  const table = tableAt(reading, cursor, "what a motif meets", keysOf("meeting"), example);
  const heights = piece.marks ?? new Map<string, number | undefined>();
  const markCursor = table?.need("mark", `the name of a mark: ${example}`);
  const mark =
    markCursor &&
    knownNameAt(reading, markCursor, "mark", "unknown-mark", [...heights.keys()], ` on ${piece.name}`);
  const atCursor = table?.need("at", "whole, half, or a number of rows");
  const at = atCursor && phaseAt(reading, atCursor);
  if (!markCursor || mark === undefined || at === undefined) return undefined;
  const [height, fromMm, toMm] = [heights.get(mark), heights.get(from), heights.get(to)];
  if (height === undefined || fromMm === undefined || toMm === undefined) return undefined;
  if (height < fromMm || height > toMm)
    return report(reading, markCursor, {
      code: "mark-outside-field",
      message: `${mark} does not lie between ${from} and ${to}, where the motif is laid`,
      found: `${mark} (${inCm(height)})`,
      expected: `a mark from ${inCm(fromMm)} to ${inCm(toMm)} up`,
    });
  return { mark, at };
}

function phaseAt(reading: Reading, cursor: Cursor): Phase | undefined {
  if (cursor.written.kind !== "number")
    return wordAt(reading, cursor, "where in its repeat a motif stands", ["whole", "half"] as const);
  const rows = wholeAt(reading, cursor, "rows from the beginning of the repeat", limits.countOf);
  return rows === undefined ? undefined : { rows };
}
