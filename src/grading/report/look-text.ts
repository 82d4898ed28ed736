import { type Fit, lookOf } from "../../fit/fit.ts";
import { lookLines } from "../../report/fit-text.ts";
import { counted, listed } from "../../report/words.ts";
import type { SharedLook } from "../shared-look.ts";

/** A look that all sizes share: in full where nothing of it is left to each size, else what of it is shared. */
export function sharedLookLines(fit: Fit, { motif, values, segments, whole }: SharedLook): readonly string[] {
  if (whole) return lookLines(fit, lookOf(fit, motif.name));
  const quantities = motif.quantities
    .filter(({ name }) => values.has(name))
    .map(({ name, unit }) => `${name} ${counted(values.get(name)!, unit.slice(0, -1), unit)}`);
  const counts = segments?.map(({ name, pickup }) => `${name} count ${pickup}`) ?? [];
  return [`${motif.name}: ${listed([...quantities, ...counts])}`];
}

/** How one look to share differs from another, in a knitter's words. */
export function lookDifferences(
  best: readonly SharedLook[],
  rival: readonly SharedLook[],
): readonly string[] {
  return rival.flatMap(({ motif, values, segments = [] }, index) => {
    const other = best[index]!;
    const whose = rival.length > 1 ? `${motif.name}: ` : "";
    const quantities = [...values]
      .filter(([name, value]) => other.values.get(name) !== value)
      .map(([name, value]) => `${whose}${name} ${value} instead of ${other.values.get(name)}`);
    if (quantities.length > 0) return quantities;
    return segments
      .filter(({ pickup }, at) => pickup !== other.segments?.[at]?.pickup)
      .map(({ name, pickup }) => `${whose}${name} count ${pickup}`);
  });
}
