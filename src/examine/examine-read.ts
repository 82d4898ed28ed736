import { acrossSizes } from "../diagnostics/across-sizes.ts";
import type { Diagnostic } from "../diagnostics/diagnostic.ts";
import type { ReadResult } from "../garment/read-garment.ts";
import { examine } from "./examine.ts";

/** What only shows once a file is counted, in each of its sizes, with where in the file it is. */
export function examineRead({
  garment,
  range,
  locate,
}: Pick<ReadResult, "garment" | "range" | "locate">): readonly Diagnostic[] {
  const found = range
    ? acrossSizes(range.sizes.map((size) => ({ name: size.name, diagnostics: examine(size.garment) })))
    : garment
      ? examine(garment)
      : [];
  return found.map((one) => {
    const place = locate(one.path);
    return place ? { ...one, place } : one;
  });
}
