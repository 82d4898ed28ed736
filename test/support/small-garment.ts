import type { Garment } from "../../src/garment/garment.ts";
import type {
  BandEntry,
  GarmentFile,
  LikeCableEntry,
  LikeCordEntry,
  MarginsEntry,
  PieceEntry,
  PlacementEntry,
} from "./garment-file.ts";
import { garmentOf } from "./run-garment.ts";

/** Cloth that is counted in the head: a stitch is 5 mm wide, a row 4 mm high, a cord stitch 5 mm long. */
const easyCloth = {
  format: "evenrow/1",
  bed: { needles: 100 },
  gauge: {
    ground: { stitches: 20, rows: 25, over: "10 cm" },
    cord: { needles: 3, stitches: 20, over: "10 cm" },
  },
} as const;

/** A straight piece so many needles wide and so many rows long. */
export const strip = (needles: number, rows: number, more: Partial<PieceEntry> = {}): PieceEntry => ({
  outline: [
    { height: "0 mm", width: `${5 * needles} mm` },
    { height: `${4 * rows} mm`, width: `${5 * needles} mm` },
  ],
  ...more,
});

/** A pattern of so many stitches by so many rows, with nothing to choose. */
export const band = (stitches: number, rows: number): BandEntry => ({ kind: "band", stitches, repeat: rows });

/** Two crossing cords: a lead-in of `interval` rows, repeats of twice as many, `spread` needles to each side. */
export const plait = (
  interval: LikeCordEntry["interval"] & {},
  spread: LikeCordEntry["spread"] & {},
  more: Partial<LikeCordEntry> = {},
): LikeCordEntry => ({ like: "crossed cord", interval, spread, ...more });

/** A crossing of two stitches over two, every so many rows. */
export const cable = (
  interval: LikeCableEntry["interval"] & {},
  more: Partial<LikeCableEntry> = {},
): LikeCableEntry => ({ like: "transferred cable", interval, cross: [2, 2], ...more });

/** A motif on the whole of a piece, filling every row and in its middle unless margins are given. */
export const laid = (
  motif: string,
  on: string,
  margins: MarginsEntry = {},
  more: Partial<PlacementEntry> = {},
): PlacementEntry => ({
  motif,
  on,
  from: "cast-on",
  to: "bind-off",
  margins: {
    bottom: 0,
    top: 0,
    ...(margins.left === undefined && margins.right === undefined && { side: { least: 0 } }),
    ...margins,
  },
  ...more,
});

/** A garment of such pieces, on easy cloth unless another gauge or bed is given. */
export const smallGarment = (
  parts: Pick<GarmentFile, "pieces" | "motifs" | "place"> & Partial<GarmentFile>,
): Garment => garmentOf({ ...easyCloth, ...parts });
