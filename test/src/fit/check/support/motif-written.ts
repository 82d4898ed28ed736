import type { Motif } from "../../../../../src/motif/motif.ts";
import { garmentOf } from "../../../../support/run-garment.ts";

/** A motif as the file format reads it, alone in a garment with room for it. */
export function motifWritten(plain: object): Motif {
  const [motif] = garmentOf({
    format: "evenrow/1",
    title: "Motif by itself",
    bed: { needles: 200 },
    gauge: {
      ground: { stitches: 20, rows: 30, over: "10 cm" },
      cord: { needles: 3, stitches: 20, over: "10 cm" },
    },
    pieces: { panel: { outline: [0, 60].map((height) => ({ height: `${height} cm`, width: "60 cm" })) } },
    motifs: { ornament: plain },
    place: [{ motif: "ornament", on: "panel", from: "cast-on", to: "bind-off" }],
  }).motifs;
  return motif!;
}

/** One value for each quantity. */
export const valuesOf = (values: Record<string, number>): ReadonlyMap<string, number> =>
  new Map(Object.entries(values));
