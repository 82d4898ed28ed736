import type { Place } from "../diagnostics/diagnostic.ts";
import type { Path } from "../diagnostics/path.ts";
import type { Why, WhyNot, WhySo } from "./why.ts";

/** A rule that stands in the way, and its line in the text; none for one that the text does not state. */
interface ToldRule {
  readonly rule: string;
  readonly words: string;
  readonly line?: number;
}

/** What was found out, as plain data that can be passed between threads. */
export type WhyTold = WhySo | (Omit<WhyNot, "conflict"> & { readonly conflict: readonly ToldRule[] });

export function whyTold(why: Why, locate: (path: Path) => Place | undefined): WhyTold {
  if (why.status === "fits") return why;
  const conflict = why.conflict.map(({ rule, words, path }): ToldRule => {
    const place = locate(path);
    return { rule, words, ...(place && { line: place.line }) };
  });
  return { ...why, conflict };
}
