import type { BandMotif } from "../motif.ts";
import type { Trace, Values } from "../trace.ts";
import type { BlockRows } from "./blocks.ts";
import { count, refuse } from "./numbers.ts";

/** A band's repeats stand side by side without gap, and its edge stitches at both ends of all of them. */
export function traceBand(motif: BandMotif, values: Values, rows: BlockRows): Trace {
  const stitches = count(motif.stitches, values, "the stitches of a repeat", 1);
  const [left, right] = motif.edge.map((edge) => count(edge, values, "the edge stitches", 0)) as [
    number,
    number,
  ];
  if (motif.card !== undefined && motif.card % stitches !== 0)
    refuse(
      motif.stitches,
      values,
      `a card ${motif.card} stitches wide repeats ${divisorsOf(motif.card)} stitches, and this comes out as ${stitches}`,
    );
  // The yarns are changed where the carriage starts from: back there after an even number of rows only.
  if (motif.colours > 1 && rows.repeatRows % 2 !== 0)
    refuse(
      motif.repeat,
      values,
      `colours change after an even number of rows, and this comes out as ${rows.repeatRows}`,
    );
  const half = Math.floor(stitches / 2);
  return {
    ...rows,
    strands: [],
    folded: [],
    cables: [],
    ladders: [],
    reach: { left: half, right: stitches - half, edge: { left, right } },
  };
}

/** "1, 2, 3, 4, 6, 8, 12 or 24". */
function divisorsOf(card: number): string {
  const divisors = Array.from({ length: card }, (_, index) => index + 1).filter((one) => card % one === 0);
  return `${divisors.slice(0, -1).join(", ")} or ${divisors.at(-1)}`;
}
