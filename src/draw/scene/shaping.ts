import { otherSide } from "../../cloth/carriage.ts";
import type { CountedPiece } from "../../cloth/counted-piece.ts";
import type { Side } from "../../garment/garment.ts";
import type { Action, SheetPiece } from "../../sheet/sheet.ts";
import type { Span } from "./cloth.ts";
import { boundaryBefore } from "./place.ts";

/** Needles added or taken away; `from` and `to` are the boundaries on both sides of just those needles. */
export interface ShapingEvent extends Span {
  readonly row: number;
  readonly kind: "increase" | "decrease" | "cast-on" | "bind-off";
  readonly needles: number;
  /** Which end of the needles in work; absent for the edge of a whole block or the centre of a neck. */
  readonly side?: Side;
  readonly edge: "outer" | "neck";
}

/** All shaping of a piece in working order: the cast-on, the edges, the neck, the bind-offs. */
export const shapingOf = (sheet: SheetPiece, piece: CountedPiece): readonly ShapingEvent[] =>
  sheet.rows.flatMap(({ row, do: actions }) =>
    actions.flatMap((action): ShapingEvent[] => {
      const event = eventOf(action, row, piece);
      return event ? [event] : [];
    }),
  );

function eventOf(action: Action, row: number, piece: CountedPiece): ShapingEvent | undefined {
  switch (action.act) {
    case "cast-on":
    case "bind-off":
    case "increase":
    case "decrease":
      break;
    default:
      return undefined;
  }
  if ("side" in action) {
    const { act: kind, side, needles } = action;
    const edge = action.edge ?? "outer";
    const { before, after } = edgeBoundaries(piece, row, side, edge);
    const [from, to] = [Math.min(before, after), Math.max(before, after)];
    return { row, kind, needles, side, edge, from, to };
  }
  const [from, to] = [boundaryBefore(action.from), boundaryBefore(action.to) + 1];
  const edge = "yarn" in action ? "neck" : "outer";
  return { row, kind: action.act, needles: to - from, edge, from, to };
}

/** The boundary of an edge before and after the shaping at a row. */
function edgeBoundaries(piece: CountedPiece, row: number, side: Side, edge: ShapingEvent["edge"]) {
  const { neck } = piece;
  // The neck's edge at a half's right side belongs to the left half.
  const half = edge === "neck" ? otherSide(side) : side;
  const index = edge === "neck" ? row - neck!.row : row;
  const needles = edge === "neck" ? neck![half] : piece[half];
  const sign = half === "left" ? -1 : 1;
  return { before: sign * needles[index - 1]!, after: sign * needles[index]! };
}
