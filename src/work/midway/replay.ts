import type { Engine } from "../../../solver/program.ts";
import type { Fit } from "../../fit/fit.ts";
import { type Asked, fitAsked } from "../../grading/fit-asked.ts";
import { refit } from "../../refit/refit.ts";
import { buildSheet } from "../../sheet/build-sheet.ts";
import { isSameSheet, type PieceWork } from "../record.ts";

/** The fit that a piece's sheet stands on, or why it cannot be had; `reason` is a sentence. */
export type Replay =
  | { readonly status: "replayed"; readonly fit: Fit; readonly planned: Fit }
  | { readonly status: "not replayed"; readonly reason: string };

/**
 * Makes the fit again that a sheet was made of: the garment's own, and on it every refit that was followed. A fit is
 * the same each time it is made, and that it is shows in its sheet.
 *
 * @param asked as read from the text that the sheet stands on
 */
export async function replay(
  asked: Asked,
  { sheet, measurements = [] }: PieceWork,
  engine: Engine,
  timeLimitMs: number,
): Promise<Replay> {
  const first = await fitAsked(asked, engine, { rivals: 0, timeLimitMs });
  if (first.status !== "fits") return gone;
  const planned = first.fit;
  let fit = planned;
  for (const { row, isRefitted, lengthMm, widthMm } of measurements) {
    if (!isRefitted) continue;
    const measured = {
      ...(lengthMm !== undefined && { lengthMm }),
      ...(widthMm !== undefined && { widthMm }),
    };
    const again = await refit(fit, { piece: sheet.piece, row, measured }, engine, { timeLimitMs });
    if (again.status !== "refitted") return gone;
    fit = again.fit;
  }
  const made = buildSheet(fit).pieces.find(({ piece }) => piece === sheet.piece);
  return made && isSameSheet(made, sheet) ? { status: "replayed", fit, planned } : gone;
}

const gone: Replay = {
  status: "not replayed",
  reason:
    "The sheet that you follow is not the one that its garment file gives, so its rest cannot be reckoned here.",
};
