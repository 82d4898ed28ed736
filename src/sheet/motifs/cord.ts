import { needleFrom } from "../../cloth/bed.ts";
import { type Hanging, hangingsOf } from "../../cord/cord.ts";
import type { Fit, FittedPlacement } from "../../fit/fit.ts";
import type { Trace } from "../../motif/trace.ts";
import type { HangAction } from "../sheet.ts";
import type { Placed } from "./placed.ts";

/** Hangings of one column in the order of work of their rows, each strand's last one with its finish. */
export function cordActions(
  fit: Fit,
  placement: FittedPlacement,
  centre: number,
  column: number,
): readonly Placed[] {
  const { folded } = placement.sections[0]!.look.trace;
  const whose = { motif: placement.motif, placement: placement.index + 1, column };
  const loops = fit.garment.gauge.cord!.needles;
  return inWorkingOrder(hangingsOf(placement.sections, placement.part?.columns[column - 1])).flatMap(
    (hanging): Placed[] => {
      const { strand, count } = hanging;
      const needle = needleFrom(centre, hanging.needle);
      const row = placement.firstRow + hanging.row;
      const hang: Placed = [
        row,
        {
          act: "hang",
          strand,
          count,
          needle,
          ...foldOf(folded, hanging),
          ...(hanging.loop && { loop: true as const }),
          ...whose,
        },
      ];
      if (!hanging.last) return [hang];
      const how = endsWithLastRow(folded, strand) ? "unravel" : "cut";
      return [hang, [row, { act: "finish", strand, how, loops, needle, ...whose }]];
    },
  );
}

const inWorkingOrder = (hangings: readonly Hanging[]): readonly Hanging[] =>
  [...hangings].sort((one, other) => one.row - other.row || one.rank - other.rank);

/** At the middle of a folded cord: that it is, and which strand its other arm is. */
function foldOf(folded: Trace["folded"], { strand, count }: Hanging): Pick<HangAction, "folded" | "with"> {
  const other = folded.find((pair) => pair.includes(strand))?.find((arm) => arm !== strand);
  return count === 0 && other !== undefined ? { folded: true, with: other } : {};
}

/**
 * A knitted cord can be unravelled from its last row only. Of a folded cord that is the end of the second arm;
 * the first arm ends where the cord was cast on. Common practice, no published source.
 */
const endsWithLastRow = (folded: Trace["folded"], strand: string): boolean =>
  !folded.some(([first]) => first === strand);
