import { needleFrom, needlesBetween } from "../cloth/bed.ts";
import { type Hanging, hangingsOf } from "../cord/cord.ts";
import { type Fit, type FittedPlacement, lookOf } from "../fit/fit.ts";
import type { CableMotif, CordMotif } from "../motif/motif.ts";
import { pointsOver } from "../motif/sections.ts";
import type { Action, CrossAction } from "./sheet.ts";

/** Actions by row. */
export type ActionsByRow = Map<number, Action[]>;

/** What the motifs on a piece ask for, in working order within each row: column by column, strand by strand. */
export function motifActions(fit: Fit, piece: string): ActionsByRow {
  const actions: ActionsByRow = new Map();
  for (const placement of fit.placements) {
    if (placement.piece !== piece) continue;
    const { motif } = lookOf(fit, placement.motif);
    placement.panel.centres.forEach((centre, index) => {
      const made =
        motif.kind === "cord"
          ? cordActions(fit, placement, motif, centre, index + 1)
          : cableActions(placement, motif, centre, index + 1);
      for (const [row, action] of made) actions.set(row, [...(actions.get(row) ?? []), action]);
    });
  }
  return actions;
}

type Placed = readonly [row: number, action: Action];

function cordActions(
  fit: Fit,
  placement: FittedPlacement,
  motif: CordMotif,
  centre: number,
  column: number,
): readonly Placed[] {
  const hangings = hangingsOf(placement.sections);
  const loops = fit.garment.gauge.cord!.needles;
  return hangings.flatMap((hanging, index): Placed[] => {
    const { strand } = hanging;
    const needle = needleFrom(centre, hanging.needle);
    const row = placement.firstRow + hanging.row;
    const hang: Placed = [
      row,
      {
        act: "hang",
        strand,
        count: hanging.count,
        needle,
        ...(startsFold(motif, hanging) && { folded: true as const }),
        motif: motif.name,
        placement: placement.index + 1,
        column,
      },
    ];
    const last = hangings[index + 1]?.strand !== strand;
    if (!last) return [hang];
    const how = endsWithLastRow(motif, strand) ? "unravel" : "cut";
    return [
      hang,
      [
        row,
        {
          act: "finish",
          strand,
          how,
          loops,
          needle,
          motif: motif.name,
          placement: placement.index + 1,
          column,
        },
      ],
    ];
  });
}

const startsFold = (motif: CordMotif, { strand, count }: Hanging): boolean =>
  count === 0 && motif.folded.some((pair) => pair.includes(strand));

/**
 * A knitted cord can be unravelled from its last row only. Of a folded cord that is the end of the second arm;
 * the first arm ends where the cord was cast on. Common practice, no published source.
 */
const endsWithLastRow = (motif: CordMotif, strand: string): boolean =>
  !motif.folded.some(([first]) => first === strand);

function cableActions(
  placement: FittedPlacement,
  motif: CableMotif,
  centre: number,
  column: number,
): readonly Placed[] {
  const runs = placement.sections.map(({ look: { trace }, repeats }) => ({ trace, repeats }));
  return pointsOver(runs, ({ cable }) => cable!).map(({ needle, row, section }): Placed => {
    const { left, right } = runs[section]!.trace.cable!;
    const middle = centre + needle;
    const [from, to] = needlesBetween(middle - left, middle + right);
    const cross: CrossAction = {
      act: "cross",
      from,
      to,
      left,
      right,
      over: motif.over,
      motif: motif.name,
      placement: placement.index + 1,
      column,
    };
    return [placement.firstRow + row, cross];
  });
}
