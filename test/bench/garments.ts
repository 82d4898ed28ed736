import { stringify } from "yaml";
import type { Garment } from "../../src/garment/garment.ts";
import { readGarment } from "../../src/garment/read-garment.ts";

/** An invented garment with so many pieces that all carry one crossed cord. */
export function garmentWith(placements: number): Garment {
  const pieces = Object.fromEntries(
    Array.from({ length: placements }, (_, index) => [
      `piece ${index + 1}`,
      {
        outline: [
          { height: "0 cm", width: `${20 + (index % 5)} cm` },
          { height: `${33 + (index % 7)} cm`, width: `${31 + (index % 3)} cm` },
        ],
        marks: { "rib top": "4 cm" },
        grow: "1 cm",
        shrink: "1 cm",
      },
    ]),
  );
  const text = stringify({
    format: "evenrow/1",
    bed: { needles: 200 },
    gauge: {
      ground: { stitches: 22, rows: 31, over: "10 cm" },
      cord: { needles: 3, stitches: 19, over: "10 cm" },
    },
    pieces,
    motifs: {
      plait: {
        like: "crossed cord",
        interval: { allow: [2, 4, 6, 8], prefer: 4 },
        spread: { allow: "2..9", prefer: 3 },
      },
    },
    place: Object.keys(pieces).map((on) => ({
      motif: "plait",
      on,
      from: "rib top",
      margins: { bottom: "2..20", top: "0..12", side: { least: 5 } },
    })),
  });
  const { garment, diagnostics } = readGarment(text, "bench.yaml");
  if (!garment) throw new Error(diagnostics[0]?.message);
  return garment;
}
