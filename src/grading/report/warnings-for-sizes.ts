import { listed } from "../../report/words.ts";
import { shortCautionsFor } from "../../safety/cautions.ts";
import { warningsFor } from "../../safety/warnings.ts";
import type { FittedSize } from "../range-result.ts";

/** What there is to be careful of, once for all sizes, or with the names of those that it is about. */
export function warningsForSizes(sizes: readonly FittedSize[]): readonly string[] {
  const about = new Map<string, string[]>();
  for (const { name, fit } of sizes)
    for (const words of new Set([...warningsFor(fit), ...shortCautionsFor(fit)]))
      about.set(words, [...(about.get(words) ?? []), name]);
  return [...about].map(([words, names]) =>
    names.length === sizes.length ? words : `${listed(names)}: ${words}`,
  );
}
