import { expect, test } from "vitest";
import { differencesOf, sheetsToKeep } from "../../../src/work/differences.ts";
import { applyEvents } from "../../../src/work/events.ts";
import { newRecord } from "../../../src/work/record.ts";
import { sheetOfSample } from "./support/records.ts";

const sheet = await sheetOfSample("sleeve");
const longer = await sheetOfSample("sleeve", (text) => text.replaceAll("36 cm", "38 cm"));
const start = newRecord(sheet, "");
const at = (row: number) => applyEvents(start, [{ kind: "jump", row, part: 1 }]);

test("nothing is asked of a piece that is not begun, or whose sheet is the same", () => {
  expect(differencesOf(start, longer.pieces)).toEqual([]);
  expect(differencesOf(at(50), (JSON.parse(JSON.stringify(sheet)) as typeof sheet).pieces)).toEqual([]);
});

test("a change beyond the present row says the rows in all and the first row that differs", () => {
  const [difference] = differencesOf(at(50), longer.pieces);
  expect(difference).toEqual({
    piece: "sleeve",
    isSameSoFar: true,
    words: [
      "Rows in all: 118 instead of 112.",
      "The first row that differs is row 112. Your sheet: bind off all stitches, L34 to R34. New sheet: nothing to do there.",
      "What you have done so far is the same in both.",
    ],
  });
});

test("a change of what is done already names its rows", async () => {
  const other = await sheetOfSample("sleeve", (text) => text.replace("width: 31 cm", "width: 30 cm"));
  const [difference] = differencesOf(at(50), other.pieces);
  expect(difference!.isSameSoFar).toBe(false);
  expect(difference!.words.at(-1)).toMatch(
    /^Already done, and otherwise in the new sheet: rows \d+(, \d+)* and \d+/,
  );
});

test("a begun piece that the file has no more is told, and stays", () => {
  expect(differencesOf(at(50), [])).toEqual([
    { piece: "sleeve", isSameSoFar: true, words: ["The file has no piece called sleeve any more."] },
  ]);
});

test("going on with what was begun takes new sheets only for pieces that are not begun", () => {
  expect(sheetsToKeep(at(50), longer.pieces)).toEqual(sheet.pieces);
  expect(sheetsToKeep(start, longer.pieces)).toEqual(longer.pieces);
});
