import { describe, expect, test } from "vitest";
import type { DoLine, WorkLine } from "../../../../src/sheet/document/document.ts";
import { rowsText } from "../../../../src/sheet/text/rows-text.ts";

const done = (row: number, phrases: readonly string[], running: readonly string[] = []): DoLine => ({
  kind: "do",
  row,
  carriage: "right",
  phrases,
  running,
});
const knit = (rows: number, toRow: number): WorkLine => ({ kind: "knit", rows, toRow, carriage: "left" });

describe("lines of work", () => {
  test("have their row's number at the head, and all that is done there below each other", () => {
    expect(
      rowsText(
        [
          done(0, ["cast on L5 to R5"]),
          knit(7, 7),
          done(7, ["left: count 3", "right: count 3"]),
          knit(5, 12),
          done(12, ["bind off all stitches"]),
        ],
        80,
      ),
    ).toEqual([
      "row  0  cast on L5 to R5",
      "        knit 7 rows, to row 7, carriage left",
      "row  7  left: count 3",
      "        right: count 3",
      "        knit 5 rows, to row 12, carriage left",
      "row 12  bind off all stitches",
    ]);
  });

  test("stand in line for the longest number, also where that is of rows that are knitted only", () => {
    expect(rowsText([done(3, ["a"])], 80)).toEqual(["row 3  a"]);
    expect(rowsText([done(3, ["a"]), knit(97, 100)], 80)).toEqual([
      "row   3  a",
      "         knit 97 rows, to row 100, carriage left",
    ]);
  });

  test("that are too long go on two places further in", () => {
    expect(rowsText([done(10, ["hang both legs on L3", "hang both on R3"]), knit(1, 11)], 20)).toEqual([
      "row 10  hang both",
      "          legs on L3",
      "        hang both on",
      "          R3",
      "        knit 1 row,",
      "          to row 11,",
      "          carriage",
      "          left",
    ]);
  });
});

test("where motifs are in their repeats stands behind what is done last on the row", () => {
  expect(rowsText([done(4, ["a", "b"], ["repeat 1 of 2, row 4 of 8"])], 80)).toEqual([
    "row 4  a",
    "       b  [repeat 1 of 2, row 4 of 8]",
  ]);
  expect(rowsText([done(4, ["a"], ["plait: start of the motif", "rope: lead-in, row 1 of 2"])], 80)).toEqual([
    "row 4  a  [plait: start of the motif; rope: lead-in, row 1 of 2]",
  ]);
});
