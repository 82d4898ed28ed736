import { needlesBetween } from "../../cloth/bed.ts";
import type { FittedPlacement, FittedSection } from "../../fit/fit.ts";
import type { BandMotif } from "../../motif/motif.ts";
import type { Placed } from "./placed.ts";

/** The first row of each repeat of a band, and the row at which it ends. */
export function bandActions(placement: FittedPlacement, motif: BandMotif): readonly Placed[] {
  const { panel, firstRow, lastRow, columns, repeats, part } = placement;
  const [from, to] = needlesBetween(panel.leftEdge, panel.rightEdge);
  const whose = { motif: motif.name, placement: placement.index + 1, column: 1 };
  const placed: Placed[] = [];
  const pattern = (
    { look }: FittedSection,
    row: number,
    part: { rows: number; unfinished?: true },
  ): Placed => {
    const { reach } = look.trace;
    const edge = reach.edge ?? { left: 0, right: 0 };
    const card = cardOf(motif, panel.leftEdge + edge.left);
    return [
      row,
      {
        act: "pattern",
        from,
        to,
        repeat: placed.length + 1,
        repeats,
        ...part,
        stitches: reach.left + reach.right,
        across: columns,
        edge,
        ...(card && { card }),
        ...whose,
      },
    ];
  };
  let row = firstRow + placement.sections[0]!.look.trace.leadRows;
  for (const section of placement.sections) {
    const rows = section.look.trace.repeatRows;
    for (let time = 0; time < section.repeats; time++, row += rows)
      placed.push(pattern(section, row, { rows }));
  }
  if (part) placed.push(pattern(placement.sections.at(-1)!, lastRow, { rows: part.rows, unfinished: true }));
  return [...placed, [part?.lastRow ?? lastRow, { act: "plain", from, to, ...whose }]];
}

/**
 * A card's stitches lie half of them at either side of the bed's centre and repeat from there (machine-knitting
 * references: "repeat 24 stitches wide, 12 either side of 0"), so where a panel begins decides with which of them its
 * first repeat does.
 */
function cardOf({ card }: BandMotif, boundary: number) {
  if (card === undefined) return undefined;
  const into = boundary + Math.floor(card / 2);
  return { row: 1, stitch: into - card * Math.floor(into / card) + 1, stitches: card };
}
