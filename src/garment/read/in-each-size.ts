import type { Diagnostic } from "../../diagnostics/diagnostic.ts";
import { listed } from "../../report/words.ts";
import type { Reading } from "./cursor.ts";
import type { SizeWritten } from "./sizes.ts";

/**
 * Reads something in every size. A mistake that shows in all of them is told once and as it is; one that shows in some
 * is told once and names them.
 */
export function inEachSize<Result>(
  reading: Reading,
  sizes: readonly SizeWritten[],
  read: (reading: Reading, size: SizeWritten) => Result,
): readonly Result[] {
  const found = new Map<string, { readonly diagnostic: Diagnostic; readonly sizes: string[] }>();
  const results = sizes.map((size) => {
    const own: Reading = { ...reading, diagnostics: [] };
    const result = read(own, size);
    for (const diagnostic of own.diagnostics) {
      const key = JSON.stringify(diagnostic);
      const known = found.get(key) ?? { diagnostic, sizes: [] };
      known.sizes.push(size.name);
      found.set(key, known);
    }
    return result;
  });
  for (const { diagnostic, sizes: names } of found.values())
    reading.diagnostics.push(names.length === sizes.length ? diagnostic : inSizes(diagnostic, names));
  return results;
}

const inSizes = (diagnostic: Diagnostic, names: readonly string[]): Diagnostic => ({
  ...diagnostic,
  message: `${diagnostic.message} (in ${names.length === 1 ? "size" : "sizes"} ${listed(names)})`,
});
