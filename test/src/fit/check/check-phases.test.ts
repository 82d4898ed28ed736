import { beforeAll, describe, expect, test } from "vitest";
import { checkPhases } from "../../../../src/fit/check/check-phases.ts";
import type { Garment, Phase } from "../../../../src/garment/garment.ts";
import { fitOf, lookWith, placed, section, straight, swing, written } from "./support/laid-by-hand.ts";

/** A motif with a lead-in of 2 rows and repeats of 6. */
const led = {
  ...swing,
  lead: "interval - 1",
  strands: {
    cord: {
      ...swing.strands.cord,
      "lead-in": [["spread", "interval - 1"]],
      repeat: [
        ["-spread", "interval"],
        ["spread", "2 * interval"],
      ],
    },
  },
};

let three: Garment;

beforeAll(() => {
  three = written({ led }, [{}, {}, {}]);
});

/** The garment with so many of its placements. */
const readWith = (places: number): Garment => ({ ...three, placements: three.placements.slice(0, places) });

/** Placements of 4 repeats that begin at these rows, on pieces of their own whose seam is at row 30. */
function fitWith(garment: Garment, firstRows: readonly number[], seams: readonly number[] = []) {
  const look = lookWith(garment.motifs[0]!, { interval: 3, spread: 2 });
  const nameOf = (index: number): string => `piece ${index + 1}`;
  return fitOf(
    garment,
    firstRows.map((firstRow, index) =>
      placed([section(look, 4)], { index, piece: nameOf(index), firstRow, lastRow: firstRow + 26 }),
    ),
    firstRows.map((_, index) =>
      straight(90, 10, { name: nameOf(index), marks: new Map([["seam", seams[index] ?? 30]]) }),
    ),
  );
}

function meetingFound(firstRow: number, at: Phase): readonly string[] {
  const garment = readWith(1);
  const asking = {
    ...garment,
    placements: garment.placements.map((placement) => ({ ...placement, meet: [{ mark: "seam", at }] })),
  };
  return checkPhases(asking, fitWith(asking, [firstRow])).map(({ rule, found }) => `${rule}: ${found}`);
}

describe("the independent check of what a motif meets", () => {
  // The first repeat begins 2 rows above the first hanging, and row 30 is asked for.
  test.each([
    ["at its first repeat", 28],
    ["at its second repeat", 22],
    ["above its end", -2],
    ["two repeats below its beginning", 40],
  ])("finds it whole at a mark %s", (_, firstRow) => {
    expect(meetingFound(firstRow, "whole")).toEqual([]);
    expect(meetingFound(firstRow - 1, "whole")).toEqual([
      "led on piece 1: is 1 rows into a repeat of 6 at seam",
    ]);
    expect(meetingFound(firstRow + 1, "whole")).toEqual([
      "led on piece 1: is 5 rows into a repeat of 6 at seam",
    ]);
  });

  test("finds it at its half", () => {
    expect(meetingFound(25, "half")).toEqual([]);
    expect(meetingFound(31, "half")).toEqual([]);
    expect(meetingFound(28, "half")).toEqual(["led on piece 1: is 0 rows into a repeat of 6 at seam"]);
    expect(meetingFound(26, "half")).toEqual(["led on piece 1: is 2 rows into a repeat of 6 at seam"]);
  });

  test("finds it so many rows in, whole repeats left aside", () => {
    expect(meetingFound(26, { rows: 2 })).toEqual([]);
    expect(meetingFound(26, { rows: 8 })).toEqual([]);
    expect(meetingFound(26, { rows: 3 })).toEqual(["led on piece 1: is 2 rows into a repeat of 6 at seam"]);
  });

  test("asks nothing where nothing is to be met", () => {
    const garment = readWith(1);
    expect(checkPhases(garment, fitWith(garment, [20]))).toEqual([]);
  });
});

describe("the independent check of motifs that match across a seam", () => {
  const matched = (places: number, placements: readonly number[]): Garment => ({
    ...readWith(places),
    matches: [{ path: ["match", 0], mark: "seam", placements }],
  });

  test("finds those that are not equally far in their repeat", () => {
    const garment = matched(2, [0, 1]);
    expect(checkPhases(garment, fitWith(garment, [20, 26]))).toEqual([]);
    expect(checkPhases(garment, fitWith(garment, [20, 22], [30, 32]))).toEqual([]);
    expect(checkPhases(garment, fitWith(garment, [20, 23]))).toEqual([
      { rule: "match at seam", found: "the motifs are 2 and 5 rows into their repeat" },
    ]);
  });

  test("holds only those that the match names, by their index", () => {
    const garment = matched(3, [0, 2]);
    const fit = fitWith(garment, [20, 23, 26]);
    expect(checkPhases(garment, fit)).toEqual([]);
    const turned = { ...fit, placements: [...fit.placements].reverse(), pieces: [...fit.pieces].reverse() };
    expect(checkPhases(garment, turned)).toEqual([]);
    expect(checkPhases(matched(3, [1, 2]), turned)).toEqual([
      { rule: "match at seam", found: "the motifs are 5 and 2 rows into their repeat" },
    ]);
  });
});
