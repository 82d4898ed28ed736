import type { Piece, Side } from "../garment/garment.ts";
import { countPiece, mayStepAt, neckCorners, outlineCorners, rowOf } from "./counted-piece.ts";
import { wantedEdge } from "./edge.ts";
import type { Stitch } from "./gauge.ts";

/** An edge of a piece; a half's neck edge is the one that faces the opening. */
type EdgeName = Side | "left half's neck" | "right half's neck";

/** Why a bed can come no nearer. */
export type DifferenceCause =
  /** Stations go to the nearest needle, and steps are whole needles. */
  | "whole needles"
  /** Several stitches at once wait until the carriage is at their side. */
  | "carriage"
  /** The garment wants single stitches shaped on even rows only. */
  | "even rows"
  /** What still waited when the last row was reached is bound off with the rest. */
  | "last row";

/** Where an edge as it is knitted lies furthest from the outline. */
export interface OutlineDifference {
  readonly edge: EdgeName;
  /** Above 0 the knitted edge lies further from the centre than the outline does. */
  readonly mm: number;
  /** Rows knitted up to there. */
  readonly row: number;
  readonly heightMm: number;
  readonly cause: DifferenceCause;
}

/**
 * The largest difference of each edge between the outline as it is written, in mm, and the needles that a bed can
 * work, for the piece at its own length and without what cables draw in. A height is good to half a row, because rows
 * are whole; so an edge that lies where the outline is within half a row up or down counts as lying on it.
 *
 * @returns one entry for each edge; 0 mm where an edge lies on the outline all the way
 */
export function outlineDifferences(piece: Piece, stitch: Stitch): readonly OutlineDifference[] {
  const counted = countPiece(piece, stitch);
  const toRow = (heightMm: number): number => rowOf(heightMm, stitch);
  const outer = (["left", "right"] as const).map((side): Edge => {
    const drawn = piece.outline.map(
      (at): DrawnPoint => ({
        heightMm: at.heightMm,
        mm: "widthMm" in at ? at.widthMm / 2 : side === "left" ? at.leftMm : at.rightMm,
      }),
    );
    const wanted = wantedEdge(outlineCorners(piece, side, stitch, toRow), counted.rows);
    return { name: side, firstRow: 0, drawn, wanted, knitted: counted[side] };
  });
  const { neck } = counted;
  const inner = (neck ? (["left", "right"] as const) : []).map(
    (half): Edge => ({
      name: `${half} half's neck`,
      firstRow: neck!.row,
      drawn: piece.neck.map(({ heightMm, widthMm }) => ({ heightMm, mm: widthMm / 2 })),
      wanted: wantedEdge(neckCorners(piece, stitch, toRow), counted.rows),
      knitted: neck![half],
    }),
  );
  return [...outer, ...inner].map((edge) => largest(edge, piece, stitch));
}

interface DrawnPoint {
  readonly heightMm: number;
  /** Distance from the centre line. */
  readonly mm: number;
}

interface Edge {
  readonly name: EdgeName;
  readonly firstRow: number;
  readonly drawn: readonly DrawnPoint[];
  readonly wanted: readonly number[];
  readonly knitted: readonly number[];
}

/** The row at the end is left out: it is knitted on the needles of the row before, and then all is bound off. */
function largest(edge: Edge, piece: Piece, stitch: Stitch): OutlineDifference {
  const { knitted, firstRow } = edge;
  let [mm, index] = [0, 0];
  for (let at = 0; at < knitted.length - 1; at++) {
    const height = (firstRow + at) * stitch.heightMm;
    const off = beyond(knitted[at]! * stitch.widthMm, edge.drawn, height, stitch.heightMm / 2);
    if (Math.abs(off) > Math.abs(mm)) [mm, index] = [off, at];
  }
  const row = firstRow + index;
  return { edge: edge.name, mm, row, heightMm: row * stitch.heightMm, cause: causeOf(edge, piece, index) };
}

function causeOf({ wanted, knitted, firstRow }: Edge, piece: Piece, index: number): DifferenceCause {
  const now = knitted[index]!;
  const change = Math.abs(wanted[index]! - now);
  if (change === 0) return "whole needles";
  if (knitted.slice(index).every((needles) => needles === now)) return "last row";
  return change === 1 && !mayStepAt(piece, firstRow + index) ? "even rows" : "carriage";
}

/** How far a place lies outside of all that a line passes through between two heights. */
function beyond(mm: number, line: readonly DrawnPoint[], heightMm: number, slackMm: number): number {
  const [low, high] = [heightMm - slackMm, heightMm + slackMm];
  const passed = [
    at(line, low),
    at(line, high),
    ...line.filter((point) => point.heightMm >= low && point.heightMm <= high).map((point) => point.mm),
  ];
  const [least, most] = [Math.min(...passed), Math.max(...passed)];
  return Math.max(0, mm - most) - Math.max(0, least - mm);
}

/** A line's place at a height; below its foot and above its top, that of its end. */
function at(line: readonly DrawnPoint[], heightMm: number): number {
  const above = line.findIndex((point) => point.heightMm > heightMm);
  if (above < 0) return line.at(-1)!.mm;
  const [from, to] = [line[above - 1], line[above]!];
  if (!from) return to.mm;
  return from.mm + ((to.mm - from.mm) * (heightMm - from.heightMm)) / (to.heightMm - from.heightMm);
}
