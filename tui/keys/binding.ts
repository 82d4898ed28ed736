import type { State } from "../state.ts";

/** Where a key is valid: a screen, or one of the panes of the main screen. */
export type Place =
  | "rules"
  | "choices"
  | "drawing"
  | "files"
  | "opening"
  | "mistakes"
  | "typing"
  | "finding"
  | "help"
  | "sheet"
  | "compare"
  | "trade terms"
  | "trade points"
  | "why"
  | "ask quit"
  | "ask unsaved"
  | "ask conflict";

/** One line of the key table, from which handlers, the help screen, the footer and the documents are made. */
export interface Binding {
  /** The keys by name; any of them does it. */
  readonly keys: readonly string[];
  readonly action: string;
  /** What it does, for the help and the documents. */
  readonly words: string;
  /** The same in a word or two, for the footer; bindings without are not shown there. */
  readonly short?: string;
  readonly places: readonly Place[];
  /** Why it cannot be used now; undefined where it can. */
  readonly unusable?: (state: State) => string | undefined;
}

export const panes = ["rules", "choices", "drawing"] as const;
export const everywhere = [
  ...panes,
  ...(["files", "opening", "mistakes", "typing", "finding", "help", "sheet", "compare"] as const),
  ...(["trade terms", "trade points"] as const),
  "why",
  ...(["ask quit", "ask unsaved", "ask conflict"] as const),
] as const;
