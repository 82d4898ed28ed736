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

/**
 * How near a piece's edges come to its outline, one line for each: "front, left edge: at most 1.3 mm to the left of ...".
 * Two edges that are mirror images of each other are told in one line.
 */
export const differenceLines = (
  piece: string,
  differences: readonly OutlineDifference[],
): readonly string[] =>
  differences.flatMap((one, index) => {
    if (isMirrored(differences[index - 1], one)) return [];
    const both = isMirrored(one, differences[index + 1]);
    const { edge, mm, row, heightMm, cause } = one;
    const size = Math.abs(mm).toFixed(1);
    const name = `${piece}, ${both ? (isNeck(edge) ? "both neck edges" : "both edges") : `${edge} edge`}`;
    if (size === "0.0") return [`${name}: on the outline all the way`];
    const side = both
      ? `${mm > 0 ? "further from" : "nearer to"} the centre than the outline`
      : `to the ${sideOf(edge, mm)} of the outline`;
    return [
      `${name}: at most ${size} mm ${side}, ${inCentimetres(heightMm)} up (row ${row}): ${CAUSES[cause]}`,
    ];
  });

/** Whether the same is to be told of two edges that face each other, which are told one after the other. */
function isMirrored(left: OutlineDifference | undefined, right: OutlineDifference | undefined): boolean {
  if (!left || !right || !left.edge.startsWith("left") || isNeck(left.edge) !== isNeck(right.edge))
    return false;
  const told = ({ mm }: OutlineDifference): string => mm.toFixed(1);
  const lies = [left, right].map(({ mm }) => Math.abs(mm) >= 0.05);
  if (!lies[0] && !lies[1]) return true;
  return told(left) === told(right) && left.row === right.row && left.cause === right.cause;
}

const isNeck = (edge: OutlineDifference["edge"]): boolean => edge.endsWith("neck");

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
