import type { Beside } from "../src/explore/read-source.ts";
import type { SolveReport, SolveRequest } from "./solver/messages.ts";
import type { TradeReport, TradeRequest } from "./solver/trade-messages.ts";
import type { ShelfEntry, State, UnsavedText } from "./state.ts";

/** Everything that can happen to the program. */
export type Message =
  /** One key by its name, such as "j", "up", "ctrl-r" or "enter". */
  | { readonly kind: "key"; readonly key: string }
  | { readonly kind: "resized"; readonly columns: number; readonly rows: number }
  | { readonly kind: "shelf"; readonly entries: readonly ShelfEntry[] }
  | { readonly kind: "opening"; readonly file: string }
  | ({
      readonly kind: "opened";
      readonly file: string;
      readonly text: string;
      /** Changes of an earlier run that were never saved. */
      readonly unsaved?: UnsavedText;
    } & Beside)
  | { readonly kind: "not opened"; readonly file: string; readonly reason: string }
  | SolveNews
  | TradeReport
  | { readonly kind: "saved"; readonly text: string }
  | { readonly kind: "changed on disk"; readonly theirs: string }
  | { readonly kind: "not saved"; readonly reason: string };

/** What the solving thread has found out. */
export type SolveNews = Exclude<SolveReport, { readonly kind: "started" }>;

/** What the program wants done outside of itself, as data. */
export type Effect =
  | { readonly kind: "list shelf" }
  | { readonly kind: "open"; readonly file: string; readonly size?: string }
  | { readonly kind: "new" }
  | ({ readonly kind: "solve" } & SolveRequest)
  /** Ends the search of a request with the best so far. */
  | { readonly kind: "end search"; readonly sequence: number }
  | ({ readonly kind: "trade" } & TradeRequest)
  /** Gives up the trade-off that is being sought. */
  | { readonly kind: "give up trade" }
  /** Writes `text` over a file that still reads `base`. */
  | { readonly kind: "save"; readonly file: string; readonly text: string; readonly base: string }
  /** Keeps changes that are not saved yet, for the case that the program does not get to save them. */
  | { readonly kind: "keep"; readonly file: string; readonly base: string; readonly text: string }
  | { readonly kind: "forget kept"; readonly file: string }
  | { readonly kind: "suspend" }
  | { readonly kind: "quit" };

/** A state and what is to be done because of it. */
export interface Next {
  readonly state: State;
  readonly effects: readonly Effect[];
}
