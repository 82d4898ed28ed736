import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { endsTaken, isAtPhase, keepsMeetings, phasesOf, rowsIntoRepeat } from "../../../src/fit/phase.ts";
import { field } from "./support/plain-parts.ts";

const standing = { change: 0, bottom: 2, leadRows: 4, repeatRows: 8 };

test("a row is so far into the repeat that holds it, below the first one as well", () => {
  expect([0, 1, 7, 8, 17].map((rows) => rowsIntoRepeat(rows, 8))).toEqual([0, 1, 7, 0, 1]);
  // A row below the beginning of a repeat is the last row of the one before.
  expect([-1, -8, -9].map((rows) => rowsIntoRepeat(rows, 8))).toEqual([7, 0, 7]);
  fc.assert(
    fc.property(fc.integer({ min: -99, max: 99 }), fc.integer({ min: 1, max: 20 }), (rows, repeatRows) => {
      const into = rowsIntoRepeat(rows, repeatRows);
      expect(into).toBe(rows - Math.floor(rows / repeatRows) * repeatRows);
    }),
    { numRuns: 50 },
  );
});

describe("where a motif stands at matched marks", () => {
  test("is counted from its first repeat, above margin and lead-in", () => {
    // Repeats begin at rows 2 + 4 = 6, 14, 22, 30: row 14 is whole, row 29 is 7 rows in, row 5 the last of one before.
    expect(phasesOf({ ...standing, field: field({ matchedRows: [14, 29, 5] }) })).toEqual([0, 7, 7]);
  });

  test("has its lead-in below the first repeat, however long that is", () => {
    // A margin of 2 and a lead-in of 3: repeats begin at rows 5 and 13.
    expect(phasesOf({ ...standing, leadRows: 3, field: field({ matchedRows: [5, 14] }) })).toEqual([0, 1]);
  });

  test("is counted in the field's own rows", () => {
    // The field begins at row 10, its first repeat at 16.
    const higher = field({ fromRow: 10, toRow: 40, matchedRows: [16, 20] });
    expect(phasesOf({ ...standing, field: higher })).toEqual([0, 4]);
  });

  test("moves with the mark where the field changes its length", () => {
    // 40 rows become 44: the mark at row 20 moves to 22 and the one at its end to 44.
    const stretching = field({ matchedRows: [20, 40] });
    expect(phasesOf({ ...standing, field: stretching, change: 4 })).toEqual([(22 - 6) % 8, (44 - 6) % 8]);
  });
});

describe("meeting a mark", () => {
  const meets = (at: "whole" | "half" | { rows: number }, row: number, repeatRows = 8): boolean =>
    keepsMeetings({ ...standing, repeatRows, field: field({ meetings: [{ row, at }] }) });

  test("whole is where a repeat begins", () => {
    expect([meets("whole", 14), meets("whole", 15), meets("whole", 18)]).toEqual([true, false, false]);
  });

  test("half is its middle, and a repeat of odd rows has none", () => {
    expect([meets("half", 18), meets("half", 14), meets("half", 22)]).toEqual([true, false, false]);
    expect(Array.from({ length: 30 }, (_, row) => meets("half", row, 7))).not.toContain(true);
  });

  test("so many rows are counted from its beginning, a whole repeat of them being none", () => {
    expect([meets({ rows: 3 }, 17), meets({ rows: 3 }, 18)]).toEqual([true, false]);
    expect([meets({ rows: 11 }, 17), meets({ rows: 8 }, 14)]).toEqual([true, true]);
  });

  test("is kept where all of several are, and where nothing is asked", () => {
    const all = (...rows: number[]): boolean =>
      keepsMeetings({
        ...standing,
        field: field({ meetings: rows.map((row) => ({ row, at: "whole" as const })) }),
      });
    expect([all(), all(6, 22), all(6, 23), all(7, 22)]).toEqual([true, true, false, false]);
  });
});

test("a row is at the phase that is asked for", () => {
  expect([isAtPhase(16, "whole", 8), isAtPhase(-4, "half", 8), isAtPhase(-5, { rows: 3 }, 8)]).toEqual([
    true,
    true,
    true,
  ]);
  expect([isAtPhase(15, "whole", 8), isAtPhase(0, "half", 8), isAtPhase(5, { rows: 3 }, 8)]).toEqual([
    false,
    false,
    false,
  ]);
});

test("a motif stands on a row that its field shares where it leaves no margin there", () => {
  const sharing = (first: boolean, last: boolean) => field({ sharedRows: { first, last } });
  expect([endsTaken(sharing(true, false), 0, 3), endsTaken(sharing(true, false), 3, 0)]).toEqual([[1], [0]]);
  expect([endsTaken(sharing(false, true), 0, 3), endsTaken(sharing(false, true), 3, 0)]).toEqual([[0], [1]]);
  expect([endsTaken(sharing(true, true), 0, 3), endsTaken(sharing(true, true), 3, 0)]).toEqual([
    [1, 0],
    [0, 1],
  ]);
  expect(endsTaken(field(), 0, 0)).toEqual([]);
});
