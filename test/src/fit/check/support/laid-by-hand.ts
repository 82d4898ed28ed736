import { stringify } from "yaml";
import type { CountedPiece } from "../../../../../src/cloth/counted-piece.ts";
import type { Fit, FittedLook, FittedPlacement, FittedSection } from "../../../../../src/fit/fit.ts";
import type { FittedSegment } from "../../../../../src/fit/looks.ts";
import type { Garment } from "../../../../../src/garment/garment.ts";
import { readGarment } from "../../../../../src/garment/read-garment.ts";
import type { Motif } from "../../../../../src/motif/motif.ts";
import type { Trace } from "../../../../../src/motif/trace.ts";

/**
 * Fits laid by hand, on a cloth whose stitch is 4 mm wide and whose row is 3 mm high: a stretch of cord over n needles
 * and n rows is 5 n mm long, and a cord stitch is 5 mm.
 */
const cloth = {
  format: "evenrow/1",
  bed: { needles: 60 },
  gauge: {
    ground: { stitches: 30, rows: 40, over: "12 cm" },
    cord: { needles: 3, stitches: 24, over: "12 cm" },
  },
};

/** 20 needles and 60 rows. */
const panel = {
  outline: [
    { height: "0 mm", width: "80 mm" },
    { height: "180 mm", width: "80 mm" },
  ],
};

/** A garment of that cloth, with one motif on a straight panel unless it says otherwise; places cover the whole panel. */
export function written(
  motifs: Readonly<Record<string, object>>,
  place: readonly object[] = [{}],
  more: object = {},
): Garment {
  const [motif] = Object.keys(motifs);
  const { garment, diagnostics } = readGarment(
    stringify({
      ...cloth,
      pieces: { panel },
      motifs,
      place: place.map((one) => ({ motif, on: "panel", from: "cast-on", to: "bind-off", ...one })),
      ...more,
    }),
    "laid.yaml",
  );
  if (!garment) throw new Error(diagnostics.map(({ message }) => message).join("\n"));
  return garment;
}

/** A cord that swings over the centre from `spread` needles left of it to as many right, hung every `interval` rows. */
export const swing = {
  kind: "cord",
  quantities: {
    interval: { unit: "rows", allow: [3, 4] },
    spread: { unit: "needles", allow: "2..9" },
  },
  lead: 0,
  repeat: "2 * interval",
  strands: {
    cord: {
      start: ["-spread", 0],
      repeat: [
        ["spread", "interval"],
        ["-spread", "2 * interval"],
      ],
    },
  },
  ease: { from: "-20 %", to: "20 %" },
};

/** A cord that reaches one needle to the left and three to the right: hung on R3 and L1 in turn. */
export const hook = {
  ...swing,
  quantities: {},
  repeat: 6,
  strands: {
    cord: {
      start: [-1, 0],
      repeat: [
        [3, 3],
        [-1, 6],
      ],
    },
  },
};

/** The check works everything out from the motif itself, so a fit's trace is nothing to it. */
const noTrace: Trace = {
  leadRows: Number.NaN,
  repeatRows: Number.NaN,
  reach: { left: Number.NaN, right: Number.NaN },
  strands: [],
  folded: [],
  cables: [],
  ladders: [],
};

export const lookWith = (
  motif: Motif,
  values: Readonly<Record<string, number>>,
  segments: readonly FittedSegment[] = [],
): FittedLook => ({ motif, values: new Map(Object.entries(values)), trace: noTrace, segments });

/** A stretch over so many needles and rows in so many cord stitches, with the ease that has on this cloth. */
export const stretch = (
  needles: number,
  rows: number,
  pickup: number,
  more: Partial<FittedSegment> = {},
): FittedSegment => ({
  name: "stretch",
  needles,
  rows,
  climbs: 0,
  spanMm: Number.NaN,
  pickup,
  ease: (5 * pickup) / Math.hypot(4 * needles, 3 * rows) - 1,
  ...more,
});

export const section = (
  look: FittedLook,
  repeats: number,
  joins: readonly FittedSegment[] = [],
): FittedSection => ({ look, repeats, joins });

/** A placement on the panel, at its bottom edge and in one column in the middle unless it says otherwise. */
export const placed = (
  sections: readonly FittedSection[],
  more: Partial<FittedPlacement> = {},
): FittedPlacement => ({
  index: 0,
  piece: "panel",
  motif: sections[0]?.look.motif.name ?? "none",
  sections,
  repeats: sections.reduce((sum, { repeats }) => sum + repeats, 0),
  columns: 1,
  gap: 0,
  change: 0,
  firstRow: 0,
  lastRow: 0,
  margins: { bottom: 0, top: 0, left: 0, right: 0 },
  panel: { centres: [0], mirrored: 0, leftEdge: 0, rightEdge: 0 },
  ...more,
});

/** The panel with as many needles on both sides at every row. */
export const straight = (rows: number, needles: number, more: Partial<CountedPiece> = {}): CountedPiece => ({
  name: "panel",
  rows,
  carriage: "right",
  left: Array.from({ length: rows + 1 }, () => needles),
  right: Array.from({ length: rows + 1 }, () => needles),
  marks: new Map([
    ["cast-on", 0],
    ["bind-off", rows],
  ]),
  ...more,
});

/** The panel with other numbers of needles at some rows of one side. */
export const withNeedles = (
  piece: CountedPiece,
  side: "left" | "right",
  at: Readonly<Record<number, number>>,
): CountedPiece => ({ ...piece, [side]: piece[side].map((needles, row) => at[row] ?? needles) });

export const fitOf = (
  garment: Garment,
  placements: readonly FittedPlacement[],
  pieces: readonly CountedPiece[],
): Fit => ({
  garment,
  cost: 0,
  terms: [],
  looks: [...new Set(placements.flatMap(({ sections }) => sections.slice(0, 1).map(({ look }) => look)))],
  placements,
  pieces,
});
