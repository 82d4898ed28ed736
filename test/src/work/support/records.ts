import { readFileSync } from "node:fs";
import fc from "fast-check";
import { buildSheet } from "../../../../src/sheet/build-sheet.ts";
import type { Sheet, SheetPiece } from "../../../../src/sheet/sheet.ts";
import type { WorkEvent } from "../../../../src/work/events.ts";
import { newRecord, type WorkRecord } from "../../../../src/work/record.ts";
import { fitHere, soundGarment } from "../../../support/run-garment.ts";

/** The sheet of a sample, its file changed where that is asked for. */
export async function sheetOfSample(
  name: string,
  change: (text: string) => string = (text) => text,
): Promise<Sheet> {
  const result = await fitHere(soundGarment(change(readFileSync(`samples/${name}.yaml`, "utf8"))));
  if (result.status !== "fits") throw new Error(`the garment does not fit: ${result.status}`);
  return buildSheet(result.fit);
}

export const pieceOfSample = async (name: string): Promise<SheetPiece> =>
  (await sheetOfSample(name)).pieces[0]!;

/** Work on a piece without a neck and on one with it, before anything was knitted. */
export async function twoPieces(): Promise<WorkRecord> {
  const [sleeve, front] = [await pieceOfSample("sleeve"), await pieceOfSample("front")];
  return newRecord({ pieces: [sleeve, front] }, "hash");
}

/** Whatever a knitter may do with two pieces, the impossible included. */
export const anyEvents: fc.Arbitrary<readonly WorkEvent[]> = fc.array(
  fc.oneof(
    { weight: 12, arbitrary: fc.constant<WorkEvent>({ kind: "next" }) },
    { weight: 4, arbitrary: fc.constant<WorkEvent>({ kind: "back" }) },
    fc.constant<WorkEvent>({ kind: "mistake" }),
    fc.record({ kind: fc.constant("note" as const), text: fc.string({ unit: "grapheme", maxLength: 20 }) }),
    fc.record({
      kind: fc.constant("jump" as const),
      row: fc.integer({ min: -2, max: 200 }),
      part: fc.integer({ min: 0, max: 3 }),
    }),
    fc.record({
      kind: fc.constant("choose" as const),
      piece: fc.constantFrom("sleeve", "front", "hood"),
    }),
  ),
  { maxLength: 60 },
);
