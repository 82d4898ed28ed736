import type { SheetPiece } from "../sheet/sheet.ts";
import { isSameSheet, type PieceWork } from "./record.ts";

/** How the sheet that is followed at the machine parts from another one of the same piece. */
export interface OtherSheet {
  /** The first row at which something else is done, in working order. */
  readonly fromRow: number;
  /** Whether it was fitted anew by what was measured at the row counter. */
  readonly isRefitted: boolean;
}

/** @returns undefined where the sheet that is followed says the same as the other one */
export function otherSheetFollowed(
  { sheet, measurements = [] }: PieceWork,
  other: SheetPiece,
): OtherSheet | undefined {
  if (isSameSheet(sheet, other)) return undefined;
  const said = (row: SheetPiece["rows"][number] | undefined): string => JSON.stringify(row) ?? "";
  const [longer, shorter] = sheet.rows.length > other.rows.length ? [sheet, other] : [other, sheet];
  const index = longer.rows.findIndex((row, at) => said(row) !== said(shorter.rows[at]));
  const rows = [longer, shorter].flatMap(({ rows }) => rows[index]?.row ?? []);
  return {
    fromRow: rows.length > 0 ? Math.min(...rows) : 0,
    isRefitted: measurements.some(({ isRefitted }) => isRefitted),
  };
}
