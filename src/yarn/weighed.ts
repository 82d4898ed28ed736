import type { WeighedSwatch } from "../garment/garment.ts";
import { type Range, times } from "./range.ts";

/** A kitchen scale shows whole grams. Common practice, no published source. */
const weighedToGrams = 0.5;

/**
 * Grams of so many stitches by the weight of a swatch: grams of the swatch / its stitches x stitches ("How to
 * estimate yarn requirements", web page, Jan 2016: stitches of the piece over stitches of a weighed amount).
 */
export const gramsByWeight = ({ stitches, grams }: WeighedSwatch, wanted: number): Range =>
  times(
    { least: Math.max(0, grams - weighedToGrams), about: grams, most: grams + weighedToGrams },
    wanted / stitches,
  );
