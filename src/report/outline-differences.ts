import type { DifferenceCause, OutlineDifference } from "../cloth/outline-differences.ts";
import { roundTo } from "./rounding.ts";
import { inCentimetres } from "./words.ts";

/** What a bed could not do, in a knitter's words. */
const CAUSES: Readonly<Record<DifferenceCause, string>> = {
  "whole needles": "needles are whole",
  carriage: "several stitches wait for the carriage",
  "even rows": "single stitches are shaped on even rows only",
  "last row": "what is left at the last row is bound off at once",
};

/** How near a piece's edges come to its outline, one line for each: "front, left edge: at most 1.3 mm to the left of ...". */
export const differenceLines = (
  piece: string,
  differences: readonly OutlineDifference[],
): readonly string[] =>
  differences.map(({ edge, mm, row, heightMm, cause }) => {
    const size = Math.abs(mm).toFixed(1);
    const name = `${piece}, ${edge} edge`;
    return size === "0.0"
      ? `${name}: on the outline all the way`
      : `${name}: at most ${size} mm to the ${sideOf(edge, mm)} of the outline, ${inCentimetres(heightMm)} up (row ${row}): ${CAUSES[cause]}`;
  });

/** Where the knitted edge lies as seen from the outline; an edge may itself lie beyond the centre line. */
const sideOf = (edge: OutlineDifference["edge"], mm: number): string =>
  edge.startsWith("left") === mm > 0 ? "left" : "right";

/** The same for programs: mm above 0 lie further from the centre than the outline. */
export const differencesToJson = (
  piece: string,
  differences: readonly OutlineDifference[],
): readonly object[] =>
  differences.map(({ edge, mm, row, heightMm, cause }) => ({
    piece,
    edge,
    difference_mm: roundTo(mm, 2),
    row,
    height_mm: roundTo(heightMm, 1),
    cause,
  }));
