import type { Garment, Phase } from "../../garment/garment.ts";
import type { Fit, FittedPlacement } from "../fit.ts";
import { type Breach, breach } from "./breach.ts";
import { walk } from "./walk.ts";

/** Every motif stands at its marks as it should: at the phase asked for, and as its match on another piece does. */
export function checkPhases(garment: Garment, fit: Fit): readonly Breach[] {
  const at = (index: number, mark: string): number =>
    rowsInto(fit, fit.placements.find((one) => one.index === index)!, mark);
  const meetings = fit.placements.flatMap((fitted) =>
    garment.placements[fitted.index]!.meet.flatMap(({ mark, at: asked }) => {
      const found = at(fitted.index, mark);
      const repeat = repeatRowsOf(fitted);
      return meets(found, asked, repeat)
        ? []
        : [
            breach(
              `${fitted.motif} on ${fitted.piece}`,
              `is ${found} rows into a repeat of ${repeat} at ${mark}`,
            ),
          ];
    }),
  );
  const matches = garment.matches.flatMap(({ mark, placements }) => {
    const found = placements.map((index) => at(index, mark));
    return new Set(found).size === 1
      ? []
      : [breach(`match at ${mark}`, `the motifs are ${found.join(" and ")} rows into their repeat`)];
  });
  return [...meetings, ...matches];
}

function meets(rows: number, asked: Phase, repeat: number): boolean {
  if (asked === "whole") return rows === 0;
  return asked === "half" ? 2 * rows === repeat : rows === asked.rows % repeat;
}

/** Rows from the last whole repeat to a mark, the motif thought on beyond both of its ends. */
function rowsInto(fit: Fit, fitted: FittedPlacement, mark: string): number {
  const piece = fit.pieces.find(({ name }) => name === fitted.piece)!;
  const repeat = repeatRowsOf(fitted);
  const above = piece.marks.get(mark)! - (fitted.firstRow + walkedRows(fitted, 0));
  return ((above % repeat) + repeat) % repeat;
}

const repeatRowsOf = (fitted: FittedPlacement): number => walkedRows(fitted, 1) - walkedRows(fitted, 0);

function walkedRows({ sections }: FittedPlacement, repeats: number): number {
  const { motif, values } = sections[0]!.look;
  return walk(motif, [{ values, repeats }]).rows;
}
