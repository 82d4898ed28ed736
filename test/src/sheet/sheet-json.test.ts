import { expect, test } from "vitest";
import type { SheetPiece } from "../../../src/sheet/sheet.ts";
import { sheetToJson } from "../../../src/sheet/sheet-json.ts";

const pocket: SheetPiece = {
  piece: "pocket",
  needlesAtStart: [-5, 5],
  rowsInAll: 12,
  rows: [{ row: 0, carriage: "right", needles: [-5, 5], do: [{ act: "cast-on", from: -5, to: 5 }] }],
};

test("a sheet for programs names its format, and how many of a piece are made only where it is not one", () => {
  expect(sheetToJson({ pieces: [pocket, { ...pocket, piece: "sleeve", make: 2 }] })).toEqual({
    format: "evenrow-sheet/1",
    pieces: [
      { piece: "pocket", needles_at_start: [-5, 5], rows_in_all: 12, rows: pocket.rows },
      { piece: "sleeve", make: 2, needles_at_start: [-5, 5], rows_in_all: 12, rows: pocket.rows },
    ],
  });
  expect(Object.keys((sheetToJson({ pieces: [pocket] }) as { pieces: [object] }).pieces[0])).not.toContain(
    "make",
  );
});
