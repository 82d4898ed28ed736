import { describe, expect, test } from "vitest";
import { knittableEdge, wantedEdge } from "../../../src/cloth/edge.ts";

describe("wantedEdge", () => {
  test("spreads steps evenly and lets the later of two corners at one row hold", () => {
    const corners = [
      { row: 0, needles: 10 },
      { row: 8, needles: 12 },
      { row: 8, needles: 9 },
      { row: 10, needles: 9 },
    ];
    // Two steps over eight rows: in the middle of each four.
    expect(wantedEdge(corners, 10)).toEqual([10, 10, 11, 11, 11, 11, 12, 12, 9, 9, 9]);
  });

  test("begins at the first corner's row and goes on straight above the last one", () => {
    const corners = [
      { row: 3, needles: 7 },
      { row: 7, needles: 5 },
    ];
    // Two steps down over four rows: after one and after three.
    expect(wantedEdge(corners, 9)).toEqual([7, 6, 6, 5, 5, 5, 5]);
  });

  test("starts each stretch's steps at the corner below it", () => {
    const corners = [
      { row: 0, needles: 4 },
      { row: 4, needles: 4 },
      { row: 8, needles: 6 },
    ];
    expect(wantedEdge(corners, 8)).toEqual([4, 4, 4, 4, 4, 5, 5, 6, 6]);
  });
});

describe("knittableEdge", () => {
  const odd = (row: number): boolean => row % 2 === 1;

  test("lets one needle change on any row and makes several wait for the carriage", () => {
    expect(knittableEdge([5, 6, 6, 3, 3, 3], (row) => !odd(row))).toEqual([5, 6, 6, 6, 3, 3]);
    expect(knittableEdge([5, 6, 6, 3, 3, 3], odd)).toEqual([5, 6, 6, 3, 3, 3]);
  });

  test("makes a single needle wait for a row on which it may change, and several only for the carriage", () => {
    const even = (row: number): boolean => !odd(row);
    expect(knittableEdge([5, 6, 6, 7, 7, 7], odd, even)).toEqual([5, 5, 6, 6, 7, 7]);
    expect(knittableEdge([5, 8, 8, 8, 8, 8], odd, even)).toEqual([5, 8, 8, 8, 8, 8]);
  });

  test("begins where it is wanted, and has as many rows", () => {
    expect(knittableEdge([5], odd)).toEqual([5]);
    expect(knittableEdge([5, 4, 3, 3], () => false)).toEqual([5, 4, 3, 3]);
    // Two at once wait for the carriage, also where a needle of them came later.
    expect(knittableEdge([5, 3, 2, 2, 2], (row) => row === 3)).toEqual([5, 5, 5, 2, 2]);
  });

  test("shapes nothing on the last row, where all is bound off", () => {
    expect(knittableEdge([5, 5, 6], odd)).toEqual([5, 5, 5]);
  });
});
