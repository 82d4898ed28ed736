import type { CountedPiece } from "../../cloth/counted-piece.ts";
import type { Fit, FittedMargins, FittedPlacement } from "../../fit/fit.ts";
import { extentsOf } from "../../fit/growth/extents.ts";
import { tracesOf } from "../../fit/growth/growth.ts";
import { oneColumn, panelOf } from "../../fit/panel.ts";
import { least } from "../../garment/allowed.ts";
import type { Side, SideMargins } from "../../garment/garment.ts";
import { growingQuantity } from "../../motif/growing-quantity.ts";
import type { Span } from "./cloth.ts";

/** Where one placement lies: its field between two marks, and the panel of its motif within. */
export interface SceneField {
  /** Index among the garment's placements. */
  readonly placement: number;
  readonly motif: string;
  readonly from: string;
  readonly to: string;
  readonly fromRow: number;
  readonly toRow: number;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly repeats: number;
  readonly panel: Span;
  readonly margins: FittedMargins;
  /** Where each side's margin is the one told. */
  readonly closest: Readonly<Record<Side, ClosestTo>>;
}

/** The row at which a motif comes nearest to an edge, and the boundary that it reaches there. */
interface ClosestTo {
  readonly row: number;
  readonly reach: number;
}

/** A run of needles in one knitted row (counted from 1). */
export interface Strip extends Span {
  readonly row: number;
}

export const fieldsOn = (fit: Fit, piece: CountedPiece): readonly SceneField[] =>
  placementsOn(fit, piece).map((fitted): SceneField => {
    const { from, to } = fit.garment.placements[fitted.index]!;
    const { firstRow, lastRow, panel } = fitted;
    return {
      placement: fitted.index,
      motif: fitted.motif,
      from,
      to,
      fromRow: piece.marks.get(from)!,
      toRow: piece.marks.get(to)!,
      firstRow,
      lastRow,
      repeats: fitted.repeats,
      panel: { from: panel.leftEdge, to: panel.rightEdge },
      margins: fitted.margins,
      closest: { left: closestTo("left", piece, fitted), right: closestTo("right", piece, fitted) },
    };
  });

function closestTo(side: Side, piece: CountedPiece, fitted: FittedPlacement): ClosestTo {
  const edge = piece[side];
  const sign = side === "left" ? -1 : 1;
  const places = extentsIn(fitted).flatMap(({ fromRow, toRow, panel: { leftEdge, rightEdge } }) =>
    Array.from({ length: toRow - fromRow + 1 }, (_, index) => ({
      row: fromRow + index,
      reach: side === "left" ? leftEdge : rightEdge,
    })),
  );
  const room = ({ row, reach }: ClosestTo): number => edge[row]! - sign * reach;
  return places.reduce((best, one) => (room(one) < room(best) ? one : best));
}

/** The panel of a motif; of one that grows, as wide as each repeat is. */
function extentsIn({ sections, firstRow, lastRow, panel }: FittedPlacement) {
  const motif = sections[0]?.look.motif;
  if (!motif || !growingQuantity(motif)) return [{ fromRow: firstRow, toRow: lastRow, panel }];
  return extentsOf(tracesOf(sections)).map(({ fromRow, toRow, reach }) => ({
    fromRow: firstRow + fromRow,
    toRow: firstRow + toRow,
    panel: panelOf(oneColumn, reach),
  }));
}

/** The least side margin at every row of every field, as far as it is cloth. */
export const unreachableOn = (
  fit: Fit,
  piece: CountedPiece,
  cells: readonly (readonly Span[])[],
): readonly Strip[] =>
  placementsOn(fit, piece).flatMap((fitted) => {
    const { from, to, margins } = fit.garment.placements[fitted.index]!;
    const strips: Strip[] = [];
    for (let row = piece.marks.get(from)!; row < piece.marks.get(to)!; row++) {
      const [left, right] = [-piece.left[row]!, piece.right[row]!];
      const reachFrom = Math.min(right, left + leastMargin(margins.sides, "left"));
      const reachTo = Math.max(reachFrom, right - leastMargin(margins.sides, "right"));
      for (const cloth of cells[row]!)
        for (const zone of [
          { from: left, to: reachFrom },
          { from: reachTo, to: right },
        ]) {
          const strip = { from: Math.max(cloth.from, zone.from), to: Math.min(cloth.to, zone.to) };
          if (strip.from < strip.to) strips.push({ row: row + 1, ...strip });
        }
    }
    return strips;
  });

const leastMargin = (sides: SideMargins, side: Side): number =>
  sides.kind === "centred" ? sides.least : least(sides[side]);

const placementsOn = (fit: Fit, piece: CountedPiece): readonly FittedPlacement[] =>
  fit.placements.filter((fitted) => fitted.piece === piece.name);
