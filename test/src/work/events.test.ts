import fc from "fast-check";
import { expect, test } from "vitest";
import { applyEvent, applyEvents, type WorkEvent } from "../../../src/work/events.ts";
import { currentPiece, newRecord, pieceNamed, stepOf, type WorkRecord } from "../../../src/work/record.ts";
import { stepsOf } from "../../../src/work/steps.ts";
import { anyEvents, sheetOfSample, twoPieces } from "./support/records.ts";

const start = await twoPieces();
const runs = { seed: 20261125, numRuns: 300 };

const next = (times: number): readonly WorkEvent[] => Array(times).fill({ kind: "next" });
const rowOf = (record: WorkRecord): number => stepOf(currentPiece(record)).row;

test("whatever happens, every piece stands at one of its steps and one of them is at hand", () => {
  fc.assert(
    fc.property(anyEvents, (events) => {
      const record = applyEvents(start, events);
      expect(record.pieces.map(({ sheet }) => sheet.piece)).toEqual(["sleeve", "front"]);
      expect(pieceNamed(record, record.piece)).toBeDefined();
      for (const piece of record.pieces) expect(stepsOf(piece.sheet)[piece.at]).toBeDefined();
      for (const { notes } of record.pieces)
        expect(new Set(notes.map(({ row, part }) => `${row}/${part}`)).size).toBe(notes.length);
    }),
    runs,
  );
});

test("going back undoes going on, and marking a mistake twice undoes itself", () => {
  fc.assert(
    fc.property(anyEvents, (events) => {
      const record = applyEvents(start, events);
      const on = applyEvent(record, { kind: "next" });
      if (on !== record) expect(applyEvent(on, { kind: "back" })).toEqual(record);
      const marked = applyEvents(record, [{ kind: "mistake" }, { kind: "mistake" }]);
      expect(new Set(currentPiece(marked).mistakes)).toEqual(new Set(currentPiece(record).mistakes));
    }),
    runs,
  );
});

test("a record comes back from its JSON as it was, and goes on alike", () => {
  fc.assert(
    fc.property(anyEvents, anyEvents, (events, more) => {
      const record = applyEvents(start, events);
      const again = JSON.parse(JSON.stringify(record)) as WorkRecord;
      expect(again).toEqual(record);
      expect(applyEvents(again, more)).toEqual(applyEvents(record, more));
    }),
    { ...runs, numRuns: 60 },
  );
});

test("what cannot be leaves the record as it is", () => {
  const end = applyEvents(start, next(10_000));
  expect(rowOf(end)).toBe(112);
  expect(applyEvent(end, { kind: "next" })).toBe(end);
  expect(applyEvent(start, { kind: "back" })).toBe(start);
  expect(applyEvent(start, { kind: "jump", row: 113, part: 1 })).toBe(start);
  expect(applyEvent(start, { kind: "jump", row: 3, part: 2 })).toBe(start);
  expect(applyEvent(start, { kind: "choose", piece: "hood" })).toBe(start);
});

test("each piece keeps its own place, and each half of a neck its own rows", () => {
  const record = applyEvents(start, [
    ...next(18),
    { kind: "choose", piece: "front" },
    { kind: "jump", row: stepsOf(start.pieces[1]!.sheet).at(-1)!.row, part: 1 },
    { kind: "next" },
  ]);
  expect(stepOf(currentPiece(record)).part).toBe(2);
  expect(rowOf(applyEvent(record, { kind: "choose", piece: "sleeve" }))).toBe(18);
});

test("a note stands at its row, is said anew in its place, and goes when it is empty", () => {
  const noted = applyEvents(start, [...next(3), { kind: "note", text: " dropped L5 " }]);
  expect(currentPiece(noted).notes).toEqual([{ row: 3, part: 1, text: "dropped L5" }]);
  const anew = applyEvent(noted, { kind: "note", text: "picked it up" });
  expect(currentPiece(anew).notes).toEqual([{ row: 3, part: 1, text: "picked it up" }]);
  expect(currentPiece(applyEvent(anew, { kind: "note", text: " " })).notes).toEqual([]);
});

test("a new sheet is followed from the same row, begun pieces that it lacks are kept, others go", async () => {
  const longer = (await sheetOfSample("sleeve", (text) => text.replaceAll("36 cm", "38 cm"))).pieces;
  const record = applyEvents(start, [...next(50), { kind: "note", text: "here" }]);
  const follows = applyEvent(record, { kind: "follow", garmentText: "new", sheets: longer });
  expect(follows.garmentText).toBe("new");
  expect(rowOf(follows)).toBe(50);
  expect(currentPiece(follows).sheet.rowsInAll).toBe(118);
  expect(currentPiece(follows).notes).toHaveLength(1);
  expect(follows.pieces).toHaveLength(1);
  const other = applyEvent(record, {
    kind: "follow",
    garmentText: "new",
    sheets: [start.pieces[1]!.sheet],
  });
  expect(other.pieces.map(({ sheet }) => sheet.piece)).toEqual(["front", "sleeve"]);
  expect(rowOf(other)).toBe(50);
});

test("where the new sheet is shorter than what is knitted, the piece stands at its end", async () => {
  const longer = (await sheetOfSample("sleeve", (text) => text.replaceAll("36 cm", "38 cm"))).pieces;
  const record = applyEvents(newRecord({ pieces: longer }, "hash"), next(1_000));
  const follows = applyEvent(record, {
    kind: "follow",
    garmentText: "new",
    sheets: [start.pieces[0]!.sheet],
  });
  expect(rowOf(follows)).toBe(112);
});
