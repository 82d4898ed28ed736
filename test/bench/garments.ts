import { stringify } from "yaml";
import type { Garment } from "../../src/garment/garment.ts";
import { readGarment } from "../../src/garment/read-garment.ts";
import type { GarmentFile } from "../support/garment-file.ts";

const onOneMachine: Pick<GarmentFile, "format" | "bed" | "gauge"> = {
  format: "evenrow/1",
  bed: { needles: 200 },
  gauge: {
    ground: { stitches: 22, rows: 31, over: "10 cm" },
    cord: { needles: 3, stitches: 19, over: "10 cm" },
  },
};

/** An invented garment with so many pieces that all carry one crossed cord, as its file has it. */
export function fileWith(placements: number): GarmentFile {
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
  return {
    ...onOneMachine,
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
      to: "bind-off",
      margins: { bottom: "2..20", top: "0..12", side: { least: 5 } },
    })),
  };
}

/** The same as it is read. */
export const garmentWith = (placements: number): Garment => garmentFrom(fileWith(placements));

function garmentFrom(parts: object): Garment {
  const text = stringify({ ...onOneMachine, ...parts });
  const { garment, diagnostics } = readGarment(text, "bench.yaml");
  if (!garment) throw new Error(diagnostics[0]?.message);
  return garment;
}

/** An invented sleeve whose cord may widen over twelve repeats, by one needle from each to the next. */
export const growingGarment = (): Garment =>
  garmentFrom({
    pieces: {
      sleeve: {
        outline: [
          { height: "0 cm", width: "14 cm" },
          { height: "36 cm", width: "40 cm" },
        ],
      },
    },
    motifs: {
      plait: {
        like: "crossed cord",
        interval: { allow: [2, 4, 6], prefer: 4 },
        spread: { allow: "3..16", prefer: 14, change: 1 },
      },
    },
    place: [
      {
        motif: "plait",
        on: "sleeve",
        repeats: 12,
        margins: { bottom: "0..20", top: "0..20", side: { least: 8 } },
      },
    ],
  });

/** An invented panel with a lattice of nine strands. */
export const latticeGarment = (): Garment =>
  garmentFrom({
    pieces: {
      panel: {
        outline: [
          { height: "0 cm", width: "44 cm" },
          { height: "40 cm", width: "44 cm" },
        ],
        grow: "1 cm",
        shrink: "1 cm",
      },
    },
    motifs: { net: { like: "lattice", cords: 9 } },
    place: [{ motif: "net", on: "panel", margins: { bottom: "0..20", top: "0..20", side: { least: 2 } } }],
  });
