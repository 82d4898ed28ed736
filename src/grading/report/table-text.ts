import type { Fit } from "../../fit/fit.ts";
import { timesMade } from "../../garment/times-made.ts";
import { wrap } from "../../report/wrap.ts";
import { printed, type TableLine } from "../table/line.ts";
import type { Table, TablePart } from "../table/table.ts";

/** The table of sizes, thing by thing, in lines of at most `width` characters. */
export function tableText(table: Table, fit: Fit, width: number): readonly string[] {
  const labels = Math.max(...table.flatMap(({ lines }) => lines.map((one) => labelOf(one).length)));
  return table.flatMap((part) => {
    const inner = part.placement === undefined ? "  " : "    ";
    return [
      // A motif on a piece stands under the piece; everything else is a heading of its own.
      ...(part.placement === undefined ? [""] : []),
      ...wrap(headingOf(part, fit), width, 4),
      ...part.lines.flatMap((one) => {
        const label = `${inner}${labelOf(one)}`.padEnd(labels + 6);
        return wrap(`${label}  ${printed(one)}`, width, labels + 8);
      }),
    ];
  });
}

const labelOf = ({ quantity, unit }: TableLine): string =>
  // Words that say what is counted need no unit after them.
  quantity.split(" ").some((word) => unit.startsWith(word)) ? quantity : `${quantity}, ${unit}`;

function headingOf({ piece, motif, placement }: TablePart, fit: Fit): string {
  if (placement !== undefined) {
    const { from, to } = fit.garment.placements[placement]!;
    return `  ${motif} from ${from} to ${to}`;
  }
  if (piece !== undefined) {
    const times = timesMade(fit.garment, piece);
    return times > 1 ? `${piece} (make ${times})` : piece;
  }
  return motif === undefined ? "in all" : `${motif}, in each size`;
}
