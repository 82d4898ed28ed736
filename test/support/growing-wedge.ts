import { countPiece } from "../../src/cloth/counted-piece.ts";
import { groundStitch } from "../../src/cloth/gauge.ts";
import type { Room } from "../../src/fit/candidates.ts";
import { type Field, fieldsOf } from "../../src/fit/field.ts";
import { type Track, tracksOf } from "../../src/fit/growth/tracks.ts";
import type { CountLimits } from "../../src/fit/steady/counts.ts";
import type { Garment } from "../../src/garment/garment.ts";
import { growingQuantity } from "../../src/motif/growing-quantity.ts";
import type { CordMotif } from "../../src/motif/motif.ts";
import { garmentText } from "./garment-text.ts";
import { soundGarment } from "./run-garment.ts";

export interface Wedge {
  readonly garment: Garment;
  readonly motif: CordMotif;
  readonly field: Field;
  /** One for each interval, in rising order. */
  readonly tracks: readonly Track[];
}

/** How a wedge differs from the usual one. */
export interface WedgeWishes {
  /** Of the piece, as in a file. */
  readonly outline?: string;
  readonly interval?: string;
  readonly spread?: string;
  /** More of the motif, each key after a comma. */
  readonly motif?: string;
  /** Of the placement. */
  readonly margins?: string;
  readonly limits?: CountLimits;
}

/**
 * A wedge of 30 rows and from 16 to 28 needles across with a crossed cord that widens with it. A stitch is 5 mm wide, a
 * row 4 mm high, a cord stitch 2.5 mm long.
 */
export function wedge({
  outline = "[{ height: 0 cm, width: 8 cm }, { height: 12 cm, width: 14 cm }]",
  interval = "{ allow: [4, 6], prefer: 4 }",
  spread = "{ allow: 3..6, prefer: 5, change: 1 }",
  motif: more = "",
  margins = "{ bottom: 0..6, top: 0..6, side: { least: 4 } }",
  limits = {},
}: WedgeWishes = {}): Wedge {
  const garment = soundGarment(
    garmentText({
      gauge: `gauge:
  ground: { stitches: 20, rows: 25, over: 10 cm }
  cord: { needles: 3, stitches: 40, over: 10 cm }`,
      pieces: `pieces:\n  wedge: { outline: ${outline} }`,
      motifs: `motifs:\n  plait: { like: crossed cord, interval: ${interval}, spread: ${spread}${more} }`,
      place: `place:\n  - { motif: plait, on: wedge, margins: ${margins} }`,
    }),
  );
  const motif = garment.motifs[0] as CordMotif;
  return {
    garment,
    motif,
    field: fieldsOf(garment)[0]!,
    tracks: tracksOf(motif, growingQuantity(motif)!, garment.gauge, garment.weights, limits),
  };
}

/** The whole field of a wedge, for one of its tracks. */
export function roomIn({ garment, field }: Wedge, { footing }: Track): Room {
  const piece = countPiece(field.piece, groundStitch(garment.gauge));
  return {
    field,
    footing,
    change: 0,
    rows: field.toRow - field.fromRow,
    columns: 1,
    gap: 0,
    pieces: [{ piece, fromRow: field.fromRow }],
    company: 0,
    weights: garment.weights,
  };
}
