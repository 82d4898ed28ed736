import { readSwatch } from "../../../../src/swatch/read-swatch.ts";
import type { Swatch } from "../../../../src/swatch/swatch.ts";

/** Swatches from their words, which have to be right. */
export const swatchesOf = (...texts: readonly string[]): readonly Swatch[] =>
  texts.map((text) => {
    const read = readSwatch(text);
    if ("swatch" in read) return read.swatch;
    throw new Error(`${text}: ${read.problem}`);
  });
