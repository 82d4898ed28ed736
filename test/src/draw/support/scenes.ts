import { readFileSync } from "node:fs";
import { type Scene, sceneOf } from "../../../../src/draw/scene.ts";
import type { Fit } from "../../../../src/fit/fit.ts";
import { fitHere, garmentOf, soundGarment } from "../../../support/run-garment.ts";

export const sampleNames = ["sleeve", "front", "scarf", "cable-sleeve"] as const;
export type SampleName = (typeof sampleNames)[number];

export const sampleText = (name: SampleName): string => readFileSync(`samples/${name}.yaml`, "utf8");

export async function fitOfText(text: string): Promise<Fit> {
  const result = await fitHere(soundGarment(text));
  if (result.status !== "fits") throw new Error(`the garment does not fit: ${result.status}`);
  return result.fit;
}

export async function fitOfPlain(plain: object): Promise<Fit> {
  const result = await fitHere(garmentOf(plain));
  if (result.status !== "fits") throw new Error(`the garment does not fit: ${result.status}`);
  return result.fit;
}

export const fitOfSample = (name: SampleName): Promise<Fit> => fitOfText(sampleText(name));

/** The only piece of a sample. */
export async function sceneOfSample(name: SampleName): Promise<Scene> {
  const fit = await fitOfSample(name);
  return sceneOf(fit, fit.pieces[0]!.name);
}

/** A plain piece with one written cord motif. */
export const withCord = (motif: object, title = "A square with a cord"): object => ({
  format: "evenrow/1",
  title,
  bed: { needles: 100 },
  gauge: {
    ground: { stitches: 20, rows: 30, over: "10 cm" },
    cord: { needles: 3, stitches: 18, over: "10 cm" },
  },
  pieces: {
    square: {
      outline: [
        { height: "0 cm", width: "20 cm" },
        { height: "20 cm", width: "20 cm" },
      ],
    },
  },
  motifs: { ladder: { kind: "cord", ease: { from: "-50 %", to: "100 %" }, ...motif } },
  place: [{ motif: "ladder", on: "square", margins: { bottom: 4, side: { least: 3 } } }],
});
