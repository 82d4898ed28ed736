import type { Measured } from "../../src/refit/progress.ts";
import type { SheetPiece } from "../../src/sheet/sheet.ts";
import type { Owner } from "../../src/state/lock.ts";
import type { SheetChange } from "../../src/work/differences.ts";
import type { WorkEvent } from "../../src/work/events.ts";
import type { MidwayAnswer } from "../../src/work/midway/midway.ts";
import type { WorkRecord } from "../../src/work/record.ts";
import type { Notice, Terminal } from "../state.ts";

/** All that the screen at the machine shows, as plain data. */
export interface WorkState {
  readonly terminal: Terminal;
  /** The garment file as it was named. */
  readonly file: string;
  /** What is on disk, and nothing that is not. */
  readonly record: WorkRecord;
  /** Whether this copy may write, or only looks on while another one does. */
  readonly standing: "mine" | "looking";
  /** Who has the work, where this copy only looks on; undefined where nobody has. */
  readonly owner: Owner | undefined;
  readonly screen: WorkScreen;
  readonly change: SheetChange | undefined;
  readonly message: Notice | undefined;
  /** Whether the terminal's bell rings at a row with something to do. */
  readonly bell: boolean;
}

/** What has the keys. All but `main` are passing: Esc leaves them. */
export type WorkScreen =
  | { readonly kind: "main" }
  | { readonly kind: "number"; readonly text: string }
  | { readonly kind: "ask jump"; readonly row: number; readonly part: number }
  | { readonly kind: "note"; readonly text: string }
  | { readonly kind: "measure length"; readonly text: string }
  | { readonly kind: "measure width"; readonly text: string; readonly lengthMm?: number }
  /** Another thread reckons. */
  | { readonly kind: "reckoning"; readonly measured: Measured; readonly refits: boolean }
  | ({ readonly kind: "measured"; readonly measured: Measured } & Told)
  | ({ readonly kind: "refitted"; readonly measured: Measured; readonly sheet: SheetPiece } & Told)
  | { readonly kind: "no refit"; readonly measured: Measured; readonly lines: readonly string[] }
  | { readonly kind: "not measured"; readonly lines: readonly string[] }
  | { readonly kind: "pieces"; readonly at: number }
  | { readonly kind: "help"; readonly scroll: number }
  | { readonly kind: "marks"; readonly scroll: number }
  | { readonly kind: "ask change" }
  | { readonly kind: "ask unlike" }
  | { readonly kind: "ask held" };

/** What is said of a measurement: a few words to be large, and lines. */
interface Told {
  readonly headline: readonly string[];
  readonly lines: readonly string[];
}

export type WorkPlaceName = WorkScreen["kind"];

/** Everything that can happen. */
export type WorkMessage =
  | { readonly kind: "key"; readonly key: string }
  | { readonly kind: "resized"; readonly columns: number; readonly rows: number }
  /** What was to be kept could not be; the state is the one before it. */
  | { readonly kind: "not kept"; readonly reason: string }
  /** Another copy has taken the work over. */
  | { readonly kind: "lost" }
  /** What another copy has kept meanwhile. */
  | { readonly kind: "followed"; readonly record: WorkRecord; readonly owner: Owner | undefined }
  /** What the other thread found. */
  | { readonly kind: "reckoned"; readonly answer: MidwayAnswer }
  | { readonly kind: "taken"; readonly record: WorkRecord }
  | { readonly kind: "not taken"; readonly reason: string };

/** What is to be done outside, once all events are on disk. */
export type WorkEffect = { readonly kind: "bell" | "take over" | "reckon" | "give up" | "suspend" | "quit" };

/** A state that may be shown once its events are on disk. */
export interface WorkNext {
  readonly state: WorkState;
  readonly events: readonly WorkEvent[];
  readonly effects: readonly WorkEffect[];
}
