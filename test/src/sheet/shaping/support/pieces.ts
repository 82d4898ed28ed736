import type { Action, SheetPiece, SheetRow } from "../../../../../src/sheet/sheet.ts";

/** A piece whose sheet has just these actions. */
export const pieceWith = (rows: readonly (readonly [row: number, ...actions: Action[]])[]): SheetPiece => ({
  piece: "made up",
  needlesAtStart: [-50, 50],
  rowsInAll: 200,
  rows: rows.map(
    ([row, ...actions]): SheetRow => ({ row, carriage: "right", needles: [-50, 50], do: actions }),
  ),
});
