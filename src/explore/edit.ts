import type { Path } from "../diagnostics/path.ts";
import type { EditValue } from "../edit/edit-value.ts";

/** One change of the file's text: a value put at a path, or what stands there taken out. */
export type Edit =
  | { readonly path: Path; readonly value: EditValue }
  | { readonly path: Path; readonly remove: true };

/** A change that a knitter asked for, or why it cannot be made. */
export type Change =
  | { readonly edits: readonly Edit[]; readonly words: string }
  | { readonly refused: string };

export const refused = (why: string): Change => ({ refused: why });

export const isRefused = (change: Change): change is { readonly refused: string } => "refused" in change;
