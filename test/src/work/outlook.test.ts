import { expect, test } from "vitest";
import { applyEvents } from "../../../src/work/events.ts";
import { outlookOf } from "../../../src/work/outlook.ts";
import { placeToJson } from "../../../src/work/place-json.ts";
import { placeLines } from "../../../src/work/place-text.ts";
import { currentPiece, newRecord } from "../../../src/work/record.ts";
import { stepsOf } from "../../../src/work/steps.ts";
import { pieceOfSample } from "./support/records.ts";

const sleeve = newRecord({ pieces: [await pieceOfSample("sleeve")] }, "");
const front = newRecord({ pieces: [await pieceOfSample("front")] }, "");
const at = (record: typeof sleeve, row: number, part = 1) =>
  currentPiece(applyEvents(record, [{ kind: "jump", row, part }]));

test("the next action is as many rows away as the sheet says", () => {
  expect(outlookOf(at(sleeve, 18))).toMatchObject({ rowsToNext: 4, rowsLeft: 94, rowsInAll: 112 });
  expect(outlookOf(at(sleeve, 18)).next?.row).toBe(22);
  expect(outlookOf(at(sleeve, 22)).next?.row).toBe(23);
  const end = outlookOf(at(sleeve, 112));
  expect([end.next, end.rowsLeft, end.progress]).toEqual([undefined, 0, 1]);
});

test("taking up the second half knits no row, and its rows are among those that are left", () => {
  const { sheet } = currentPiece(front);
  const neck = stepsOf(sheet).find(({ part }) => part === 2)!.row;
  const turn = outlookOf(at(front, sheet.rowsInAll, 1));
  expect([turn.rowsToNext, turn.next?.row, turn.rowsLeft]).toEqual([0, neck, sheet.rowsInAll - neck]);
  expect(outlookOf(currentPiece(front)).rowsLeft).toBe(sheet.rowsInAll + sheet.rowsInAll - neck);
});

test("the place as JSON has the fields of its format, and the half where there are two", () => {
  expect(placeToJson(at(sleeve, 18))).toEqual({
    format: "evenrow-place/1",
    piece: "sleeve",
    row: 18,
    rows: 112,
  });
  expect(placeToJson(at(front, 3))).toMatchObject({ piece: "front", row: 3, half: 1 });
});

test("the place in words says what to do now and what comes next", () => {
  expect(placeLines(at(sleeve, 18))).toEqual([
    "sleeve: row 18 of 112, carriage at the right, 94 rows left.",
    "Now: knit 4 rows, to row 22.",
    "Then: increase 1 stitch at each side.",
  ]);
  expect(placeLines(at(sleeve, 22))).toEqual([
    "sleeve: row 22 of 112, carriage at the right, 90 rows left.",
    "Now: increase 1 stitch at each side.",
    expect.stringMatching(/^Next: in 1 row, at row 23 \(carriage left\): hang the middle of the folded cord/),
  ]);
  expect(placeLines(at(sleeve, 112)).at(-1)).toBe("Next: the piece is finished.");
});

test("each half above a neck is named", () => {
  const { sheet } = currentPiece(front);
  const neck = stepsOf(sheet).find(({ part }) => part === 2)!.row;
  expect(placeLines(at(front, neck - 1))[0]).not.toContain("half");
  expect(placeLines(at(front, neck, 1))[0]).toContain(`row ${neck} of ${sheet.rowsInAll}, first half`);
  expect(placeLines(at(front, neck, 2))[0]).toContain(`row ${neck} of ${sheet.rowsInAll}, second half`);
});

test("notes and mistakes are told at their row alone", () => {
  const marked = applyEvents(sleeve, [
    { kind: "jump", row: 18, part: 1 },
    { kind: "mistake" },
    { kind: "note", text: "L5 dropped" },
  ]);
  expect(placeLines(currentPiece(marked)).slice(-2)).toEqual([
    "A mistake is marked at this row.",
    "Note: L5 dropped",
  ]);
  expect(placeLines(currentPiece(applyEvents(marked, [{ kind: "next" }]))).join()).not.toContain("L5");
});
