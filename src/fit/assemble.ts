import { type CountedPiece, countPiece } from "../cloth/counted-piece.ts";
import { extraNeedlesForDrawIn } from "../cloth/draw-in.ts";
import { groundStitch } from "../cloth/gauge.ts";
import type { Garment, Piece } from "../garment/garment.ts";
import { stretchesOf } from "./field.ts";
import type { Fit, FittedPlacement } from "./fit.ts";
import { withCost } from "./fit.ts";
import type { Layout } from "./layouts.ts";
import type { Look } from "./looks.ts";
import { narrowest } from "./panel.ts";

/** Puts the looks and layouts that were chosen together into a fit of the whole garment. */
export function assemble(garment: Garment, looks: readonly Look[], layouts: readonly Layout[]): Fit {
  const pieces = garment.pieces.map((piece) => countFitted(garment, piece, looks, layouts));
  return withCost({
    garment,
    terms: [...looks, ...layouts].flatMap(({ terms }) => terms),
    looks,
    placements: layouts.map((layout) =>
      placed(
        layout,
        looks.find(({ motif }) => motif.name === layout.field.placement.motif)!,
        pieces.find(({ name }) => name === layout.field.piece.name)!,
      ),
    ),
    pieces,
  });
}

function countFitted(
  garment: Garment,
  piece: Piece,
  looks: readonly Look[],
  layouts: readonly Layout[],
): CountedPiece {
  const onPiece = layouts.filter((layout) => layout.field.piece === piece);
  const changes = new Map(onPiece.map((layout) => [layout.field, layout.change]));
  const lost = onPiece.reduce((sum, layout) => {
    const { motif } = looks.find((look) => look.motif.name === layout.field.placement.motif)!;
    return motif.kind === "cable"
      ? sum + layout.columns * layout.footing.crossedStitches * motif.drawIn
      : sum;
  }, 0);
  return countPiece(
    piece,
    groundStitch(garment.gauge),
    stretchesOf([...changes.keys()], (field) => changes.get(field)!),
    extraNeedlesForDrawIn(lost),
  );
}

function placed(layout: Layout, look: Look, piece: CountedPiece): FittedPlacement {
  const { field, footing, repeats, columns, gap, change, bottom, top, panel } = layout;
  const firstRow = piece.marks.get(field.placement.from)! + bottom;
  const lastRow = firstRow + footing.leadRows + repeats * footing.repeatRows;
  const edge = narrowest(piece, firstRow, lastRow);
  return {
    index: field.index,
    piece: piece.name,
    motif: field.placement.motif,
    sections: [{ look, repeats, joins: [] }],
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
