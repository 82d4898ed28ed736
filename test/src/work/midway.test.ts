import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { fitGarment } from "../../../src/fit/solve.ts";
import { readGarment } from "../../../src/garment/read-garment.ts";
import { buildSheet } from "../../../src/sheet/build-sheet.ts";
import { sheetToJson } from "../../../src/sheet/sheet-json.ts";
import { applyEvent, applyEvents, type WorkEvent } from "../../../src/work/events.ts";
import { type MidwayAnswer, midway } from "../../../src/work/midway/midway.ts";
import { currentPiece, newRecord, textBehind, type WorkRecord } from "../../../src/work/record.ts";
import { knit } from "../../support/bed-simulator.ts";
import { anyEvents, sheetOfSample, twoPieces } from "./support/records.ts";

const file = "samples/sleeve.yaml";
const text = readFileSync(file, "utf8");
const begun = newRecord(await sheetOfSample("sleeve"), text);

const ask = (record: WorkRecord, measured: object, refits: boolean, name = file): Promise<MidwayAnswer> => {
  const piece = currentPiece(record);
  return midway(
    { file: name, garmentText: textBehind(record, piece), piece, measured, refits },
    simplexEngine,
    60_000,
  );
};

/** Goes to a row, measures there and follows the refit; kept as a journal keeps it. */
async function refittedAt(record: WorkRecord, row: number, lengthMm: number): Promise<WorkRecord> {
  const there = applyEvent(record, { kind: "jump", row, part: 1 });
  const measured = { lengthMm };
  const answer = await ask(there, measured, true);
  if (answer.status !== "refitted") throw new Error(answer.lines.join("\n"));
  const event: WorkEvent = { kind: "measure", measured, sheet: answer.sheet };
  return JSON.parse(JSON.stringify(applyEvent(there, event)));
}

describe("measuring on the way", () => {
  test("says where the piece ends", async () => {
    const at50 = applyEvent(begun, { kind: "jump", row: 50, part: 1 });
    const answer = await ask(at50, { lengthMm: 170 }, false);
    // 112 rows of 3.4 mm.
    expect(answer).toMatchObject({ status: "measured", headline: ["ends at 38.1 cm", "planned 36 cm"] });
  });

  test("a second refit stands on the first, and its sheet is knitted from end to end", async () => {
    const once = await refittedAt(begun, 50, 170);
    const twice = await refittedAt(once, 70, 242);
    const [before, after] = [currentPiece(once), currentPiece(twice)];
    expect(after.measurements).toEqual([
      { row: 50, part: 1, lengthMm: 170, isRefitted: true },
      { row: 70, part: 1, lengthMm: 242, isRefitted: true },
    ]);
    const upTo = (row: number, { sheet }: typeof before) => sheet.rows.filter((one) => one.row < row);
    expect(upTo(50, before)).toEqual(upTo(50, currentPiece(begun)));
    expect(upTo(70, after)).toEqual(upTo(70, before));
    expect(after.sheet.rowsInAll).toBeLessThan(before.sheet.rowsInAll);
    for (const { sheet } of [before, after]) {
      const { pieces } = JSON.parse(JSON.stringify(sheetToJson({ pieces: [sheet] })));
      expect(knit(pieces[0]).violations).toEqual([]);
    }
  });

  test("refuses in words what is not the cloth alone", async () => {
    const at50 = applyEvent(begun, { kind: "jump", row: 50, part: 1 });
    const answer = await ask(at50, { lengthMm: 990 }, true);
    expect(answer).toMatchObject({ status: "refused" });
    expect(answer.lines[0]).toContain("check the row and measure again");
  });

  test("does not guess where the sheet is not the file's", async () => {
    const other = newRecord(await sheetOfSample("sleeve"), text.replace("height: 36 cm", "height: 38 cm"));
    const answer = await ask(applyEvent(other, { kind: "jump", row: 50, part: 1 }), { lengthMm: 170 }, true);
    expect(answer).toMatchObject({ status: "refused" });
  });

  test("is offered in the first half alone, above a neck", async () => {
    const name = "samples/front.yaml";
    const sheet = await sheetOfSample("front");
    const front = newRecord(sheet, readFileSync(name, "utf8"));
    const second = applyEvent(front, { kind: "jump", row: sheet.pieces[0]!.rowsInAll, part: 2 });
    const answer = await ask(second, { lengthMm: 170 }, false, name);
    expect(answer.lines[0]).toContain("measure in the first half");
  });
});

describe("what is kept of measurements", () => {
  test("a sheet that stays remembers the text it was fitted from; another one stands on the new text", async () => {
    const once = await refittedAt(begun, 50, 170);
    const { sheet } = currentPiece(once);
    const kept = applyEvent(once, { kind: "follow", garmentText: "new", sheets: [sheet] });
    expect(textBehind(kept, currentPiece(kept))).toBe(text);
    expect(currentPiece(kept).measurements?.[0]?.isRefitted).toBe(true);
    const taken = applyEvent(kept, {
      kind: "follow",
      garmentText: "newer",
      sheets: [currentPiece(begun).sheet],
    });
    expect(textBehind(taken, currentPiece(taken))).toBe("newer");
    expect(currentPiece(taken).measurements).toEqual([
      { row: 50, part: 1, lengthMm: 170, isRefitted: false },
    ]);
  });

  test("measurements stack in order at the row where each was taken, and come back from disk", async () => {
    const record = await twoPieces();
    const measure = fc.record({
      kind: fc.constant("measure" as const),
      measured: fc.record({ lengthMm: fc.integer({ min: 1, max: 900 }) }),
    });
    fc.assert(
      fc.property(fc.array(fc.tuple(anyEvents, measure), { maxLength: 5 }), (steps) => {
        let now = record;
        for (const [events, event] of steps) {
          const before = applyEvents(now, events);
          now = applyEvent(before, event);
          const [piece, was] = [currentPiece(now), currentPiece(before)];
          expect(piece.measurements).toHaveLength((was.measurements?.length ?? 0) + 1);
          expect(piece.measurements?.at(-1)).toMatchObject({ ...event.measured, isRefitted: false });
          expect([piece.at, piece.sheet]).toEqual([was.at, was.sheet]);
        }
        expect(JSON.parse(JSON.stringify(now))).toEqual(now);
      }),
      { seed: 4, numRuns: 60 },
    );
  });
});

test("a piece of one size is reckoned with and fitted anew as that size", async () => {
  const sized = `${text}sizes:\n  long: { pieces: { sleeve: { outline: [{ height: 0 cm, width: 20 cm }, { height: 37 cm, width: 31 cm }, { height: 40 cm, width: 31 cm }] } } }\n  usual: {}\n`;
  const { range } = readGarment(sized, file);
  const [long, usual] = await Promise.all(
    range!.sizes.map(async ({ garment }) => {
      const result = await fitGarment(garment, simplexEngine, { rivals: 0 });
      if (result.status !== "fits") throw new Error(result.status);
      return newRecord(buildSheet(result.fit), sized);
    }),
  );
  const measure = (record: WorkRecord, size: string, refits: boolean): Promise<MidwayAnswer> => {
    const piece = currentPiece(applyEvent(record, { kind: "jump", row: 50, part: 1 }));
    const request = { file, garmentText: sized, size, piece, measured: { lengthMm: 170 }, refits };
    return midway(request, simplexEngine, 60_000);
  };
  expect(await measure(usual!, "usual", false)).toMatchObject({
    headline: ["ends at 38.1 cm", "planned 36 cm"],
  });
  expect(await measure(long!, "long", false)).toMatchObject({
    headline: [expect.stringMatching(/^ends at 42/), "planned 40 cm"],
  });
  expect(await measure(long!, "long", true)).toMatchObject({ status: "refitted" });
  // The sheet of one size does not stand on another.
  expect(await measure(long!, "usual", false)).toMatchObject({ status: "refused" });
});
