import type { Path } from "../diagnostics/path.ts";
import { EditError } from "../edit/edit-error.ts";
import { parseText } from "../edit/source-text.ts";
import { valueAt } from "../edit/values.ts";

/** The value that is written at a path of a garment file, tables as maps; undefined where none is. */
export function writtenAt(source: string, path: Path): unknown {
  try {
    return valueAt(parseText(source).values, path);
  } catch (error) {
    if (error instanceof EditError) return undefined;
    throw error;
  }
}

/** Whether a written value is a table that has at least one of these keys. */
export const hasKey = (value: unknown, ...keys: readonly string[]): boolean =>
  value instanceof Map && keys.some((key) => value.has(key));
