import type { CountedPiece } from "../cloth/counted-piece.ts";
import { extraNeedlesForDrawIn } from "../cloth/draw-in.ts";
import { groundStitch } from "../cloth/gauge.ts";
import { type Fit, type FittedPlacement, type FittedSection, withCost } from "../fit/fit.ts";
import type { Layout } from "../fit/layouts.ts";
import type { Look } from "../fit/looks.ts";
import { narrowest } from "../fit/panel.ts";
import type { Garment } from "../garment/garment.ts";
import { joinsTo } from "./going-on.ts";
import { lengthsOf } from "./lengths.ts";
import { recount } from "./recount.ts";
import { lossOf, type Undertaking } from "./undertaking.ts";

/**
 * Puts what was chosen on top of what is knitted. The fit is of the one piece; its garment is the whole one with the
 * gauge as measured, so that placements keep their numbers.
 */
export function assembleRefit(
  garment: Garment,
  undertaking: Undertaking,
  looks: readonly Look[],
  layouts: readonly Layout[],
): Fit {
  const { placed } = undertaking;
  const lookFor = (layout: Layout): Look =>
    looks.find(({ motif }) => motif.name === layout.field.placement.motif)!;
  const piece = pieceOf(undertaking, layouts, lookFor);
  const numbered = (index: number): number => placed[index]!.index;
  return withCost({
    garment: { ...garment, gauge: undertaking.garment.gauge },
    looks,
    terms: [...looks, ...layouts].flatMap(({ terms }) =>
      terms.map((term) =>
        term.placement === undefined ? term : { ...term, placement: numbered(term.placement) },
      ),
    ),
    placements: layouts.map((layout) => placedAt(undertaking, layout, lookFor(layout), piece)),
    pieces: [piece],
  });
}

function pieceOf(
  undertaking: Undertaking,
  layouts: readonly Layout[],
  lookFor: (layout: Layout) => Look,
): CountedPiece {
  const changes = layouts.map(({ change }) => change).join();
  const lengths = lengthsOf(undertaking).find((one) => one.changes.join() === changes)!;
  const lost = layouts.reduce((sum, layout) => sum + lossOf(lookFor(layout), layout.columns), 0);
  return recount(undertaking.begun, {
    stitch: groundStitch(undertaking.garment.gauge),
    stretches: lengths.stretches,
    extraNeedles: extraNeedlesForDrawIn(lost),
  })!;
}

function placedAt(
  undertaking: Undertaking,
  layout: Layout,
  look: Look,
  piece: CountedPiece,
): FittedPlacement {
  const { field, repeats, columns, gap, change, bottom, top, panel, firstRow, height } = layout;
  const { index } = undertaking.placed[field.index]!;
  const lastRow = firstRow + height;
  const edge = narrowest(piece, firstRow, lastRow);
  return {
    index,
    piece: piece.name,
    motif: field.placement.motif,
    sections: sectionsOf(undertaking, layout, look),
    repeats,
    columns,
    gap,
    change,
    firstRow,
    lastRow,
    margins: { bottom, top, left: edge.left + panel.leftEdge, right: edge.right - panel.rightEdge },
    panel,
  };
}

function sectionsOf(
  undertaking: Undertaking,
  { field, repeats }: Layout,
  look: Look,
): readonly FittedSection[] {
  const standing = undertaking.standing[field.index];
  if (!standing) return [{ look, repeats, joins: [] }];
  const added = repeats - standing.repeats;
  if (added === 0) return standing.sections;
  const joins = joinsTo(standing, look, undertaking.circumstances(field.placement.motif))!;
  return [...standing.sections, { look, repeats: added, joins }];
}
