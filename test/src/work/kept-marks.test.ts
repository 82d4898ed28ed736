import { expect, test } from "vitest";
import { applyEvents } from "../../../src/work/events.ts";
import { keptMarks } from "../../../src/work/kept-marks.ts";
import { currentPiece, newRecord } from "../../../src/work/record.ts";
import { pieceOfSample } from "./support/records.ts";

test("notes, mistakes and measurements are listed by their rows", async () => {
  const record = newRecord({ pieces: [await pieceOfSample("sleeve")] }, "text");
  expect(keptMarks(currentPiece(record))).toEqual(["sleeve: no notes, mistakes or measurements."]);
  const marked = applyEvents(record, [
    { kind: "jump", row: 40, part: 1 },
    { kind: "measure", measured: { lengthMm: 120, widthMm: 305 } },
    { kind: "jump", row: 18, part: 1 },
    { kind: "note", text: "L5 dropped" },
    { kind: "mistake" },
  ]);
  expect(keptMarks(currentPiece(marked))).toEqual([
    "sleeve, row 18: a mistake",
    "sleeve, row 18: note: L5 dropped",
    "sleeve, row 40: measured 12 cm long, measured 30.5 cm wide",
  ]);
});
