import type { PieceWork } from "./record.ts";
import { type Step, stepsOf } from "./steps.ts";

/** What a knitter at the machine wants to know. */
export interface Outlook {
  /** Where the piece stands. */
  readonly now: Step;
  /** The next step at which something is to do; undefined at the piece's end. */
  readonly next: Step | undefined;
  /** Rows to knit until then; 0 where the second half is taken up without knitting. */
  readonly rowsToNext: number;
  /** Rows of the whole piece, as its row numbers count them. */
  readonly rowsInAll: number;
  /** Rows still to knit, those of both halves. */
  readonly rowsLeft: number;
  /** From 0 at the cast-on edge to 1 at the end. */
  readonly progress: number;
}

export function outlookOf({ sheet, at }: PieceWork): Outlook {
  const steps = stepsOf(sheet);
  const nextAt = steps.findIndex((step, index) => index > at && step.phrases.length > 0);
  return {
    now: steps[at]!,
    next: steps[nextAt],
    rowsToNext: nextAt < 0 ? 0 : rowsBetween(steps, at, nextAt),
    rowsInAll: sheet.rowsInAll,
    rowsLeft: rowsBetween(steps, at, steps.length - 1),
    progress: steps.length === 1 ? 1 : at / (steps.length - 1),
  };
}

/** A step knits a row, save for the one that takes up the second half. */
function rowsBetween(steps: readonly Step[], from: number, to: number): number {
  let rows = 0;
  for (let index = from + 1; index <= to; index++) if (steps[index]!.part === steps[index - 1]!.part) rows++;
  return rows;
}
