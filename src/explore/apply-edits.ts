import { EditError } from "../edit/edit-error.ts";
import { removeValue, setValue } from "../edit/set-value.ts";
import type { Edit } from "./edit.ts";

/** A garment file's text after some changes made one after the other, or why they cannot be made. */
export function applyEdits(
  source: string,
  edits: readonly Edit[],
): { readonly text: string } | { readonly refused: string } {
  try {
    const text = edits.reduce(
      (before, edit) =>
        "remove" in edit ? removeValue(before, edit.path) : setValue(before, edit.path, edit.value),
      source,
    );
    return { text };
  } catch (error) {
    if (error instanceof EditError) return { refused: error.message };
    throw error;
  }
}
