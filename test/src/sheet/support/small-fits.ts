import { countPiece } from "../../../../src/cloth/counted-piece.ts";
import { groundStitch } from "../../../../src/cloth/gauge.ts";
import type { Fit } from "../../../../src/fit/fit.ts";
import type { Garment } from "../../../../src/garment/garment.ts";
import { fitHere } from "../../../support/run-garment.ts";
import { smallGarment, strip } from "../../../support/small-garment.ts";

/** The fit of a garment that has one. */
export async function fitOf(garment: Garment): Promise<Fit> {
  const result = await fitHere(garment, { rivals: 0 });
  if (result.status !== "fits") throw new Error(`the garment does not fit: ${result.status}`);
  return result.fit;
}

/** The pieces of a garment as they are counted, with nothing laid on them. */
export const bare = (garment: Garment): Fit => ({
  garment,
  cost: 0,
  terms: [],
  looks: [],
  placements: [],
  pieces: garment.pieces.map((piece) => countPiece(piece, groundStitch(garment.gauge))),
});

/** A strip with a pattern on it, for what is told of a garment and not of its ornament. */
export const plainGarment = (
  parts: Partial<Parameters<typeof smallGarment>[0]> = {},
): ReturnType<typeof smallGarment> =>
  smallGarment({
    pieces: { strip: strip(20, 10) },
    motifs: { dots: { kind: "band", stitches: 2, repeat: 2 } },
    place: [{ motif: "dots", on: "strip", from: "cast-on", to: "bind-off" }],
    ...parts,
  });
