import { listed } from "../report/words.ts";
import type { Diagnostic } from "./diagnostic.ts";

/** What was found in one size of a garment. */
export interface FoundInSize {
  readonly name: string;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * What was found in all sizes together, each once: what shows in all of them as it is, what shows in some with their
 * names.
 */
export function acrossSizes(sizes: readonly FoundInSize[]): readonly Diagnostic[] {
  const found = new Map<string, { readonly diagnostic: Diagnostic; readonly names: string[] }>();
  for (const { name, diagnostics } of sizes)
    for (const diagnostic of diagnostics) {
      const key = JSON.stringify(diagnostic);
      const known = found.get(key) ?? { diagnostic, names: [] };
      known.names.push(name);
      found.set(key, known);
    }
  return [...found.values()].map(({ diagnostic, names }) =>
    names.length === sizes.length ? diagnostic : inSizes(diagnostic, names),
  );
}

const inSizes = (diagnostic: Diagnostic, names: readonly string[]): Diagnostic => ({
  ...diagnostic,
  message: `${diagnostic.message} (in ${names.length === 1 ? "size" : "sizes"} ${listed(names)})`,
});
