import type { CountedPiece } from "../../../../src/cloth/counted-piece.ts";
import type { Stitch } from "../../../../src/cloth/gauge.ts";
import type { Field } from "../../../../src/fit/field.ts";
import type { FittedPlacement } from "../../../../src/fit/fit.ts";
import type { Footing } from "../../../../src/fit/footing.ts";
import type { Layout } from "../../../../src/fit/layouts.ts";
import type { Look } from "../../../../src/fit/looks.ts";
import { panelOf } from "../../../../src/fit/panel.ts";
import { anyFrom, only } from "../../../../src/garment/allowed.ts";
import type { Garment, Gauge, Piece, Placement } from "../../../../src/garment/garment.ts";
import type { Motif } from "../../../../src/motif/motif.ts";
import type { Trace } from "../../../../src/motif/trace.ts";

/**
 * Stitches 3 mm wide, rows 4 mm high, cord stitches 5 mm long: a stretch of n needles and n rows has a path of 5n mm and
 * takes n cord stitches without any slack.
 */
export const gauge: Gauge = {
  ground: { stitches: 20, rows: 15, overMm: 60 },
  cord: { needles: 3, stitches: 12, overMm: 60 },
};

export const stitch: Stitch = { widthMm: 3, heightMm: 4 };

/** Straight, 20 needles at each side of the centre (120 mm), 40 rows (160 mm). */
export const piece = (changes: Partial<Piece> = {}): Piece => ({
  name: "panel",
  path: ["pieces", "panel"],
  outline: [
    { heightMm: 0, widthMm: 120 },
    { heightMm: 160, widthMm: 120 },
  ],
  marks: [
    { name: "cast-on", heightMm: 0 },
    { name: "bind-off", heightMm: 160 },
  ],
  neck: [],
  growMm: 0,
  shrinkMm: 0,
  carriage: "right",
  ...changes,
});

/** In the middle of the panel, from edge to edge, with no preference and no least margin. */
export const placement = (changes: Partial<Placement> = {}): Placement => ({
  path: ["place", 0],
  motif: "plait",
  piece: "panel",
  from: "cast-on",
  to: "bind-off",
  repeats: { allowed: anyFrom(1) },
  columns: { allowed: only(1) },
  gap: { allowed: only(0) },
  margins: { bottom: anyFrom(0), top: anyFrom(0), sides: { kind: "centred", least: 0 } },
  meet: [],
  mirror: false,
  unfinished: "plain",
  ...changes,
});

/** Rows 0 to 40 of the panel, whose length stays as it is. */
export const field = (changes: Partial<Field> = {}): Field => ({
  index: 0,
  placement: placement(),
  piece: piece(),
  fromRow: 0,
  toRow: 40,
  leastChange: 0,
  mostChange: 0,
  meetings: [],
  matchedRows: [],
  ...changes,
});

export const garment = (changes: Partial<Garment> = {}): Garment => ({
  title: "Panel",
  bed: { needles: 100, carriage: "right" },
  gauge,
  yarn: {},
  pieces: [piece()],
  motifs: [],
  placements: [placement()],
  matches: [],
  weights: {},
  ...changes,
});

/** The panel as it is knitted: so many needles at each side on every row. */
export const counted = (changes: Partial<CountedPiece> & { readonly rows?: number } = {}): CountedPiece => {
  const rows = changes.rows ?? 40;
  const straight = Array.from({ length: rows + 1 }, () => 20);
  return {
    name: "panel",
    rows,
    carriage: "right",
    left: straight,
    right: straight,
    marks: new Map([
      ["cast-on", 0],
      ["bind-off", rows],
    ]),
    ...changes,
  };
};

/** A lead-in of 4 rows, repeats of 8, 3 needles to each side. */
export const footing = (changes: Partial<Footing> = {}): Footing => ({
  leadRows: 4,
  repeatRows: 8,
  reach: { left: 3, right: 3 },
  crossedStitches: 0,
  ...changes,
});

/** What has neither strands nor cables. */
export const trace = (changes: Partial<Trace> = {}): Trace => ({
  leadRows: 4,
  repeatRows: 8,
  reach: { left: 3, right: 3 },
  strands: [],
  folded: [],
  cables: [],
  ladders: [],
  ...changes,
});

/** One column of 4 repeats about the centre of the panel, from row 2 to 38, of no section. */
export const fittedPlacement = (changes: Partial<FittedPlacement> = {}): FittedPlacement => ({
  index: 0,
  piece: "panel",
  motif: "plait",
  sections: [],
  repeats: 4,
  columns: 1,
  gap: 0,
  change: 0,
  firstRow: 2,
  lastRow: 38,
  margins: { bottom: 2, top: 2, left: 17, right: 17 },
  panel: panelOf({ columns: 1, gap: 0, mirror: false }, { left: 3, right: 3 }),
  ...changes,
});

/** A look of the crossed cord, counted so, on the footing of its trace; of another motif by name. */
export const look = (changes: Partial<Look> & { readonly name?: string } = {}): Look => {
  const { name = "plait", ...more } = changes;
  return {
    motif: { name } as Motif,
    values: new Map([
      ["interval", 4],
      ["spread", 3],
    ]),
    trace: trace(),
    segments: [],
    terms: [],
    cost: 0,
    ...more,
  };
};

/** 4 repeats in the middle of the panel: rows 2 to 38, needles L3 to R3. */
export const layout = (changes: Partial<Layout> = {}): Layout => ({
  field: field(),
  footing: footing(),
  repeats: 4,
  change: 0,
  bottom: 2,
  top: 2,
  firstRow: 2,
  height: 36,
  columns: 1,
  gap: 0,
  phases: [],
  shift: 0,
  panel: panelOf({ columns: 1, gap: 0, mirror: false }, { left: 3, right: 3 }),
  terms: [],
  cost: 0,
  amounts: [],
  ...changes,
});
