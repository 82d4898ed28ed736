import fc from "fast-check";
import { expect, test } from "vitest";
import { sheetToJson } from "../../../src/sheet/sheet-json.ts";
import { copiesOf, copyCount } from "../../../src/work/copies.ts";
import { applyEvent, applyEvents, type WorkEvent } from "../../../src/work/events.ts";
import { keptMarks } from "../../../src/work/kept-marks.ts";
import { placeToJson } from "../../../src/work/place-json.ts";
import { placeLines } from "../../../src/work/place-text.ts";
import { currentPiece, newRecord, stepOf, type WorkRecord } from "../../../src/work/record.ts";
import { pieceOfSample, sheetOfSample } from "./support/records.ts";

const [sleeve] = (
  await sheetOfSample("sleeve", (text) => text.replace("  sleeve:\n", "  sleeve:\n    make: 3\n"))
).pieces;
const start = newRecord({ pieces: [sleeve!, await pieceOfSample("front")] }, "text");
const end: WorkEvent = { kind: "jump", row: 112, part: 1 };
const next: WorkEvent = { kind: "next" };
const back: WorkEvent = { kind: "back" };

const place = (record: WorkRecord) => [
  copyCount(currentPiece(record)).copy,
  stepOf(currentPiece(record)).row,
];

/** Whatever is done at a machine with a piece of three, mostly near the ends, where copies change. */
const anyWork: fc.Arbitrary<readonly WorkEvent[]> = fc.array(
  fc.oneof(
    { weight: 4, arbitrary: fc.constant(next) },
    { weight: 3, arbitrary: fc.constant(back) },
    { weight: 3, arbitrary: fc.constant(end) },
    fc.constant<WorkEvent>({ kind: "jump", row: 0, part: 1 }),
    fc.constant<WorkEvent>({ kind: "mistake" }),
    fc.constant<WorkEvent>({ kind: "note", text: "here" }),
    fc.constant<WorkEvent>({ kind: "measure", measured: { lengthMm: 100 } }),
    fc.constantFrom("sleeve", "front").map((piece): WorkEvent => ({ kind: "choose", piece })),
  ),
  { maxLength: 40 },
);

test("one step on from a copy's end begins the next one, and a step back leads to that end again", () => {
  const ended = applyEvent(start, end);
  const second = applyEvent(ended, next);
  expect(place(second)).toEqual([2, 0]);
  expect(applyEvent(second, back)).toEqual(ended);
  const last = applyEvents(second, [end, next, end]);
  expect(place(last)).toEqual([3, 112]);
  expect(applyEvent(last, next)).toBe(last);
});

test("going back undoes going on across copies, and a record comes back from its JSON as it was", () => {
  fc.assert(
    fc.property(anyWork, anyWork, (events, more) => {
      const record = applyEvents(start, events);
      const on = applyEvent(record, next);
      if (on !== record) expect(applyEvent(on, back)).toEqual(record);
      const before = applyEvent(record, back);
      // A copy that was gone back from at its beginning is kept only where something was done at it.
      if (before !== record) expect(applyEvent(before, next)).toEqual(record);
      const again = JSON.parse(JSON.stringify(record)) as WorkRecord;
      expect(applyEvents(again, more)).toEqual(applyEvents(record, more));
      const copies = record.pieces.map((piece) => copiesOf(piece).map((one) => copyCount(one).copy));
      for (const numbers of copies) expect(numbers).toEqual(numbers.map((_, index) => index + 1));
    }),
    { seed: 20261130, numRuns: 200 },
  );
});

test("notes and marks stay with their copy, and all are listed with it", () => {
  const record = applyEvents(start, [
    { kind: "jump", row: 18, part: 1 },
    { kind: "note", text: "L5 dropped" },
    end,
    next,
    { kind: "jump", row: 18, part: 1 },
    { kind: "mistake" },
  ]);
  expect(placeLines(currentPiece(record)).join(" ")).not.toContain("L5 dropped");
  expect(keptMarks(currentPiece(record))).toEqual([
    "sleeve, 1 of 3, row 18: note: L5 dropped",
    "sleeve, 2 of 3, row 18: a mistake",
  ]);
});

test("which copy it is stands in words and as JSON, and at its end how the next one begins", () => {
  const ended = currentPiece(applyEvent(start, end));
  expect(placeLines(ended)[0]).toMatch(/^sleeve, 1 of 3: row 112 of 112/);
  expect(placeLines(ended).at(-1)).toBe(
    "Next: 1 of 3 is finished; the next step begins 2 of 3 at row 0, as this one was begun: with its cord made, waste yarn, the row counter at 0.",
  );
  const last = currentPiece(applyEvents(start, [end, next, end, next, end]));
  expect(placeLines(last).at(-1)).toBe("Next: 3 of 3 is finished, and with it the piece.");
  expect(placeToJson(last)).toEqual({
    format: "evenrow-place/1",
    piece: "sleeve",
    copy: 3,
    make: 3,
    row: 112,
    rows: 112,
  });
});

test("what is fitted anew for one copy is that one's own", async () => {
  const [longer] = (
    await sheetOfSample("sleeve", (text) =>
      text.replaceAll("36 cm", "38 cm").replace("  sleeve:\n", "  sleeve:\n    make: 3\n"),
    )
  ).pieces;
  const measured: WorkEvent = { kind: "measure", measured: { lengthMm: 50 }, sheet: longer! };
  const given: WorkEvent = { kind: "follow", garmentText: "text", sheets: [longer!] };
  for (const event of [measured, given]) {
    const record = applyEvents(start, [next, event, { kind: "jump", row: 118, part: 1 }]);
    expect(currentPiece(record).sheet.rowsInAll).toBe(118);
    const second = applyEvent(record, next);
    expect(place(second)).toEqual([2, 0]);
    expect(currentPiece(second).sheet).toEqual(sleeve);
  }
  // A changed file is another matter: its sheet is that of every copy still to come.
  const changed = applyEvents(start, [next, { kind: "follow", garmentText: "new", sheets: [longer!] }]);
  const second = applyEvents(changed, [{ kind: "jump", row: 118, part: 1 }, next]);
  expect(currentPiece(second).sheet).toEqual(longer);
});

test("the sheet as JSON says how many of a piece are knitted where it is not one", () => {
  const { pieces } = sheetToJson({ pieces: start.pieces.map(({ sheet }) => sheet) }) as { pieces: object[] };
  expect(pieces[0]).toMatchObject({ piece: "sleeve", make: 3 });
  expect(pieces[1]).not.toHaveProperty("make");
});

test("a copy that is finished stands on the file's text of then", async () => {
  const record = applyEvents(start, [end, next, { kind: "follow", garmentText: "new", sheets: [sleeve!] }]);
  const [first] = copiesOf(currentPiece(record));
  expect(first?.fittedFrom).toBe("text");
});

test("a record of before the copies were counted goes on as the first of them once the file is followed", () => {
  const { make: _, ...before } = sleeve!;
  const record = applyEvent(newRecord({ pieces: [before] }, "text"), next);
  expect(copyCount(currentPiece(record))).toEqual({ copy: 1, make: 1 });
  const follows = applyEvent(record, { kind: "follow", garmentText: "new", sheets: [sleeve!] });
  expect(copyCount(currentPiece(follows))).toEqual({ copy: 1, make: 3 });
  expect(place(follows)).toEqual([1, 1]);
});
