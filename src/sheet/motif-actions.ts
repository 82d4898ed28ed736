import { type Fit, type FittedPlacement, type FittedSection, lookOf } from "../fit/fit.ts";
import { isMirrored } from "../fit/panel.ts";
import { mirrored } from "../motif/mirror.ts";
import { bandActions } from "./motifs/band.ts";
import { cableActions } from "./motifs/cable.ts";
import { cordActions } from "./motifs/cord.ts";
import type { Placed } from "./motifs/placed.ts";
import type { OrnamentAction } from "./sheet.ts";

/** Actions by row. */
export type ActionsByRow = Map<number, OrnamentAction[]>;

/** What the motifs on a piece ask for, in working order within each row: column by column, strand by strand. */
export function motifActions(fit: Fit, piece: string): ActionsByRow {
  const actions: ActionsByRow = new Map();
  for (const placement of fit.placements) {
    if (placement.piece !== piece) continue;
    for (const [row, action] of placedActions(fit, placement))
      actions.set(row, [...(actions.get(row) ?? []), action]);
  }
  return actions;
}

function placedActions(fit: Fit, placement: FittedPlacement): readonly Placed[] {
  const { motif } = lookOf(fit, placement.motif);
  switch (motif.kind) {
    case "cord":
      return placement.panel.centres.flatMap((centre, index) =>
        cordActions(fit, inColumn(placement, index), centre, index + 1),
      );
    case "cable":
      return placement.panel.centres.flatMap((centre, index) =>
        cableActions(inColumn(placement, index), centre, index + 1),
      );
    case "band":
      return bandActions(placement, motif);
  }
}

/** A placement with its motif as one of its columns shows it. */
const inColumn = (placement: FittedPlacement, column: number): FittedPlacement =>
  isMirrored(placement.panel, column)
    ? { ...placement, sections: placement.sections.map(mirroredSection) }
    : placement;

const mirroredSection = (section: FittedSection): FittedSection => ({
  ...section,
  look: { ...section.look, trace: mirrored(section.look.trace) },
});
