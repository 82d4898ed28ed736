import { describe, expect, test } from "vitest";
import type { SheetPiece } from "../../../src/sheet/sheet.ts";
import { otherSheetFollowed } from "../../../src/work/other-sheet.ts";
import { newPiece } from "../../../src/work/record.ts";
import { sheetOfSample } from "./support/records.ts";

const [sleeve] = (await sheetOfSample("sleeve")).pieces as [SheetPiece];
const last = sleeve.rows.at(-1)!;

describe("a sheet beside the one that is followed", () => {
  test("is no other one where it says the same", () => {
    expect(otherSheetFollowed(newPiece(sleeve), structuredClone(sleeve))).toBeUndefined();
  });

  test("parts from it at the first row that either has otherwise", () => {
    const shorter = { ...sleeve, rowsInAll: 106, rows: [...sleeve.rows.slice(0, -1), { ...last, row: 106 }] };
    const parting = { fromRow: 106, isRefitted: false };
    expect(otherSheetFollowed(newPiece(shorter), sleeve)).toEqual(parting);
    expect(otherSheetFollowed(newPiece(sleeve), shorter)).toEqual(parting);
  });

  test("is told apart from one that was fitted anew at the row counter, and where one only has more rows", () => {
    const more = { ...sleeve, rows: [...sleeve.rows, { ...last, row: last.row + 2 }] };
    const measurements = [{ row: 50, part: 1, lengthMm: 170, isRefitted: true }];
    expect(otherSheetFollowed({ ...newPiece(more), measurements }, sleeve)).toEqual({
      fromRow: last.row + 2,
      isRefitted: true,
    });
  });
});
