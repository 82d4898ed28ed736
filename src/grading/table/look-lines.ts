import { type Fit, lookOf } from "../../fit/fit.ts";
import type { Share } from "../../garment/garment.ts";
import { growingQuantity } from "../../motif/growing-quantity.ts";
import { sharedLook } from "../shared-look.ts";
import { line, type TableLine } from "./line.ts";

/** Quantities and counts of a motif that each size has its own of; what grows is told placement by placement. */
export function lookLines(
  fits: readonly Fit[],
  name: string,
  share: Share | undefined,
): readonly TableLine[] {
  const first = lookOf(fits[0]!, name);
  const shared = sharedLook(share, first);
  const growing = growingQuantity(first.motif);
  const quantities = first.motif.quantities.filter((one) => one !== growing && !shared?.values.has(one.name));
  const stretches = growing || shared?.segments ? [] : stretchesIn(fits, name);
  return [
    ...quantities.flatMap(({ name: quantity, unit }) =>
      line(fits, quantity, unit, (fit) => lookOf(fit, name).values.get(quantity)),
    ),
    ...stretches.flatMap((stretch) => {
      const count = (fit: Fit): number | undefined =>
        lookOf(fit, name).segments.find((one) => one.name === stretch)?.pickup;
      return line(fits, `${stretch} count`, "cord stitches", count);
    }),
  ];
}

const stretchesIn = (fits: readonly Fit[], motif: string): readonly string[] => [
  ...new Set(fits.flatMap((fit) => lookOf(fit, motif).segments.map(({ name }) => name))),
];
