import type { SheetPiece } from "../../sheet/sheet.ts";
import type { Span } from "./cloth.ts";
import { boundaryBefore } from "./place.ts";

/** A needle out of work between two rows; `from` and `to` are the boundaries at its sides. */
export interface Ladder extends Span {
  readonly needle: number;
  readonly fromRow: number;
  readonly toRow: number;
}

/** Ladders as the working sheet opens and closes them. */
export function laddersOf(sheet: SheetPiece): readonly Ladder[] {
  const opened = new Map<number, number>();
  return sheet.rows.flatMap(({ row, do: actions }) =>
    actions.flatMap((action): readonly Ladder[] => {
      if (action.act === "out") opened.set(action.needle, row);
      if (action.act !== "in") return [];
      const { needle } = action;
      const from = boundaryBefore(needle);
      return [{ needle, from, to: from + 1, fromRow: opened.get(needle)!, toRow: row }];
    }),
  );
}
