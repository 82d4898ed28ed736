import { type CountedPiece, countPiece } from "../cloth/counted-piece.ts";
import { extraNeedlesForDrawIn } from "../cloth/draw-in.ts";
import { groundStitch } from "../cloth/gauge.ts";
import type { Garment, Piece } from "../garment/garment.ts";
import { stretchesOf } from "./field.ts";
import { type Fit, type FittedLook, type FittedPlacement, withCost } from "./fit.ts";
import { extentsOf, roomBeside } from "./growth/extents.ts";
import { tracesOf } from "./growth/growth.ts";
import type { Layout } from "./layouts.ts";
import type { Look } from "./looks.ts";
import { partsThatLast } from "./on-hand/parts-that-last.ts";
import { wasteTerms } from "./on-hand/waste.ts";
import { type Narrowest, narrowest } from "./panel.ts";
import { withParts } from "./part.ts";

/** Puts the looks and layouts that were chosen together into a fit of the whole garment. */
export function assemble(garment: Garment, looks: readonly Look[], layouts: readonly Layout[]): Fit {
  const pieces = garment.pieces.map((piece) => countFitted(garment, piece, looks, layouts));
  const placements = layouts.map((layout) =>
    placed(
      layout,
      looks.find(({ motif }) => motif.name === layout.field.placement.motif)!,
      pieces.find(({ name }) => name === layout.field.piece.name)!,
    ),
  );
  const plain = {
    garment,
    terms: [...looks, ...layouts].flatMap(({ terms }) => terms),
    looks: looks.map((look) => firstLook(look, layouts)),
    placements,
    pieces,
  };
  const fit = withCost({ ...plain, terms: [...plain.terms, ...wasteTerms(plain)] });
  return { ...fit, placements: partsThatLast(fit, withParts(garment, placements, pieces)) };
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

/** What a growing motif is told by is the look it begins with. */
function firstLook(look: Look, layouts: readonly Layout[]): FittedLook {
  const layout = layouts.find(({ field }) => field.placement.motif === look.motif.name);
  return layout?.sections?.[0]?.look ?? look;
}

function placed(layout: Layout, look: Look, piece: CountedPiece): FittedPlacement {
  const { field, footing, repeats, columns, gap, change, bottom, top, panel } = layout;
  const firstRow = piece.marks.get(field.placement.from)! + bottom;
  const lastRow = firstRow + footing.leadRows + repeats * footing.repeatRows;
  const sections = layout.sections ?? [{ look, repeats, joins: [] }];
  return {
    index: field.index,
    piece: piece.name,
    motif: field.placement.motif,
    sections,
    repeats,
    columns,
    gap,
    change,
    firstRow,
    lastRow,
    margins: { bottom, top, ...roomLeft(layout, piece, firstRow, lastRow) },
    panel,
  };
}

/** Needles beside the panel at the narrowest row of the motif; beside one that grows, where it comes nearest to an edge. */
function roomLeft(
  { panel, sections }: Layout,
  piece: CountedPiece,
  firstRow: number,
  lastRow: number,
): Narrowest {
  if (sections) return roomBeside(piece, firstRow, extentsOf(tracesOf(sections)));
  const edge = narrowest(piece, firstRow, lastRow);
  return { left: edge.left + panel.leftEdge, right: edge.right - panel.rightEdge };
}
