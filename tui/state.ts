import type { Diagnostic } from "../src/diagnostics/diagnostic.ts";
import type { StandingInTheWay } from "../src/explore/answer.ts";
import { type GarmentRule, isHeld, type RuleField } from "../src/explore/garment-rule.ts";
import type { BeforeHold } from "../src/explore/hold.ts";
import type { Beside } from "../src/explore/read-source.ts";
import type { StepOutcome } from "../src/explore/steps.ts";
import type { Fits } from "../src/fit/solve.ts";
import type { Garment } from "../src/garment/garment.ts";
import type { Reached } from "../src/report/progress-words.ts";
import type { TradeOff } from "../src/tradeoff/trade.ts";
import type { TradeTerm } from "../src/tradeoff/trade-term.ts";
import type { WhyTold } from "../src/why/why-told.ts";

/** All that the screen shows, as plain data. */
export interface State {
  readonly terminal: Terminal;
  readonly screen: Screen;
  /** One line about what the last key did, or why it did nothing. */
  readonly message: Notice | undefined;
  /** What may be opened, where the program was started without a file. */
  readonly shelf: Shelf;
  readonly garment: OpenGarment | undefined;
  /** Of the newest request to the solver; never used twice. */
  readonly sequence: number;
}

export interface Terminal {
  readonly columns: number;
  readonly rows: number;
}

export interface Notice {
  readonly kind: "done" | "refused";
  readonly words: string;
}

/** What has the keys. All but `files` and `main` are passing: Esc leaves them. */
export type Screen =
  | { readonly kind: "files" }
  | { readonly kind: "opening"; readonly file: string }
  | { readonly kind: "mistakes"; readonly scroll: number }
  | { readonly kind: "main" }
  | { readonly kind: "typing"; readonly field: RuleField; readonly text: string }
  | { readonly kind: "finding"; readonly text: string; readonly from: number }
  | { readonly kind: "help"; readonly scroll: number; readonly back: Screen }
  | { readonly kind: "sheet"; readonly scroll: number }
  | { readonly kind: "compare"; readonly rival: number }
  | TradeScreen
  | WhyScreen
  | { readonly kind: "ask quit" }
  | { readonly kind: "ask unsaved"; readonly unsaved: UnsavedText }
  | { readonly kind: "ask conflict"; readonly theirs: string };

/** Terms of the cost to be traded for each other, and then the points of the trade-off. */
export interface TradeScreen {
  readonly kind: "trade";
  /** Of the garment as it is. */
  readonly terms: readonly TradeTerm[];
  /** The term that is chosen. */
  readonly at: number;
  readonly traded: readonly string[];
  /** What is traded where nothing is marked. */
  readonly suggested: readonly string[];
  readonly held: readonly string[];
  /** Of the request that is under way. */
  readonly asked?: number;
  readonly found?: TradeOff;
  /** The point that is looked at. */
  readonly point: number;
}

/** What is marked to be traded, else what is suggested and not held. */
export const toTrade = ({ traded, suggested, held }: TradeScreen): readonly string[] =>
  traded.length > 0 ? traded : suggested.filter((name) => !held.includes(name));

/** Why nothing fits and what instead, or which rules bind. */
export interface WhyScreen {
  readonly kind: "why";
  /** Of the request that is about it. */
  readonly asked: number;
  /** What is found out so far. */
  readonly why?: WhyTold;
  /** What is being done, or why there is no answer. */
  readonly doing?: string;
  readonly isDone: boolean;
  /** The answer that is chosen. */
  readonly at: number;
}

/** Changes of an earlier run that were never saved. */
export interface UnsavedText {
  readonly text: string;
  /** Whether the file was changed since they were made. */
  readonly fileChanged: boolean;
}

interface Shelf {
  readonly entries: readonly ShelfEntry[];
  readonly at: number;
}

export interface ShelfEntry {
  readonly kind: "sample" | "recent" | "new";
  readonly file: string;
  readonly title: string;
}

export type Pane = "rules" | "choices" | "drawing";

/** The garment as it can be undone to. */
export interface Version {
  readonly text: string;
  readonly beforeHold: BeforeHold;
}

export interface OpenGarment {
  readonly file: string;
  /** The text as it is on disk, as far as is known. */
  readonly saved: string;
  /** What belongs to it beside its text, as it was when the garment was opened. */
  readonly beside: Beside;
  readonly version: Version;
  readonly past: readonly Version[];
  readonly future: readonly Version[];
  readonly reading: Reading;
  readonly solving: Solving;
  readonly view: GarmentView;
  /** Whether a save is under way. */
  readonly saving: "no" | "yes" | "then quit";
}

/** What the text says; a garment only where it has no mistake. */
export interface Reading {
  readonly garment?: Garment;
  readonly diagnostics: readonly Diagnostic[];
  readonly rules: readonly GarmentRule[];
}

export interface Solving {
  /** Of the newest request; an answer with another is stale and is dropped. */
  readonly sequence: number;
  readonly underWay: boolean;
  /** How far the search has come that is under way, where it takes long. */
  readonly reached?: Reached;
  /** The last proven fit: of the text as it is, unless a solve is under way or nothing fits any more. */
  readonly shown?: Fits;
  /** Whether `shown` is of the text as it is now. */
  readonly current: boolean;
  readonly outcome: Outcome;
  readonly steps: readonly StepOutcome[];
  readonly allTried: boolean;
}

/** How the newest request that was answered came out. */
type Outcome =
  | { readonly kind: "none yet" }
  | { readonly kind: "fits" }
  /** The rules that fail to meet are found out after that. */
  | { readonly kind: "does not fit"; readonly conflict?: readonly StandingInTheWay[] }
  | { readonly kind: "stopped"; readonly reason: string }
  | { readonly kind: "failed"; readonly reason: string };

/** Where the knitter is looking. */
export interface GarmentView {
  readonly pane: Pane;
  readonly rule: number;
  readonly field: RuleField;
  /** 0 is the best fit, 1 the first rival. */
  readonly choice: number;
  /** Index among the garment's placements; the piece drawn is this one's. */
  readonly placement: number;
  /** 0 shows the whole piece; each step doubles. */
  readonly zoom: number;
  readonly scroll: { readonly across: number; readonly up: number };
}

export const initialState = (terminal: Terminal): State => ({
  terminal,
  screen: { kind: "files" },
  message: undefined,
  shelf: { entries: [], at: 0 },
  garment: undefined,
  sequence: 0,
});

export const isChanged = ({ version, saved }: OpenGarment): boolean => version.text !== saved;

/** Whether a rule was held fast while the garment is open, so that what it allowed before is known. */
export const isHeldHere = ({ version }: OpenGarment, rule: GarmentRule): boolean =>
  isHeld(rule) && version.beforeHold[rule.id] !== undefined;

export const heldHere = (garment: OpenGarment): readonly GarmentRule[] =>
  garment.reading.rules.filter((rule) => isHeldHere(garment, rule));

/** The fit that is looked at: the best, or the rival that is chosen in the list. */
export function fitShown({ solving, view }: OpenGarment) {
  const { shown } = solving;
  return shown && (view.choice === 0 ? shown.fit : (shown.rivals[view.choice - 1] ?? shown.fit));
}

export const ruleAt = ({ reading, view }: OpenGarment): GarmentRule | undefined => reading.rules[view.rule];
