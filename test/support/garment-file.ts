/**
 * The garment file `evenrow/1` as plain data, just as a YAML or JSON parser would hand it over: lengths are
 * strings with a unit, percentages strings with `%`, bare numbers are counts. The referees know a garment only
 * in this form, so that nothing of the program's own reading can colour their verdict.
 */
export interface GarmentFile {
  readonly format: "evenrow/1";
  readonly title?: string;
  readonly bed: { readonly needles: number; readonly pitch?: string };
  readonly gauge: {
    readonly ground: {
      readonly stitches: number;
      readonly rows: number;
      readonly over: string;
      readonly within?: string;
    };
    readonly cord?: {
      readonly needles: number;
      readonly stitches: number;
      readonly over: string;
      readonly thickness?: string;
      readonly within?: string;
    };
  };
  readonly steady?: boolean | string;
  readonly wearer?: { readonly age?: number | string; readonly height?: string };
  readonly yarn?: { readonly ground?: YarnEntry; readonly cord?: YarnEntry };
  readonly "on hand"?: OnHandEntry;
  readonly pieces: Readonly<Record<string, PieceEntry>>;
  readonly motifs: Readonly<Record<string, MotifEntry>>;
  readonly place: readonly PlacementEntry[];
  readonly match?: readonly MatchEntry[];
  readonly weights?: Readonly<Record<string, number>>;
}

export interface YarnEntry {
  readonly tex?: number;
  readonly swatch?: { readonly stitches: number; readonly rows?: number; readonly weight: string };
}

type AmountEntry = string | { readonly balls: number; readonly each: string };

export interface OnHandEntry {
  readonly cord?: string;
  readonly "cord yarn"?: AmountEntry;
  readonly "ground yarn"?: AmountEntry;
  readonly yarn?: AmountEntry;
  readonly prefer?: "least waste";
}

export type SideName = "left" | "right";

export type StationEntry =
  | { readonly height: string; readonly width: string }
  | { readonly height: string; readonly left: string; readonly right: string };

export interface PieceEntry {
  readonly make?: number;
  readonly outline: readonly StationEntry[];
  readonly marks?: Readonly<Record<string, string>>;
  readonly neck?: readonly { readonly height: string; readonly width: string }[];
  readonly shaping?: "any row" | "even rows";
  readonly grow?: string;
  readonly shrink?: string;
  readonly part?: string;
}

/** What `allow` takes: one number, a list, `a..b`, or an even row of numbers. */
export type AllowEntry =
  | number
  | readonly number[]
  | string
  | { readonly from: number; readonly to: number; readonly step?: number };

export interface ChoiceEntry {
  readonly allow?: AllowEntry;
  readonly prefer?: number;
}

export interface QuantityEntry extends ChoiceEntry {
  readonly unit?: "rows" | "needles" | "stitches" | "strands";
}

export interface EaseEntry {
  readonly from?: string;
  readonly to?: string;
  readonly prefer?: string;
}

type FormulaEntry = number | string;

/** Needle (or middle of a crossing) and row, and what else is said of the hanging or the crossing. */
export type AnchorEntry = readonly [
  FormulaEntry,
  FormulaEntry,
  { readonly count?: FormulaEntry; readonly turn?: FormulaEntry; readonly over?: SideName }?,
];

export interface StrandEntry {
  /** One name, and a range of two formulas: `{ i: 1..n }`. */
  readonly each?: Readonly<Record<string, string>>;
  /** A strand's name, or among numbered strands a formula for the number of one. */
  readonly next?: FormulaEntry;
  readonly start: AnchorEntry;
  readonly "lead-in"?: readonly AnchorEntry[];
  readonly repeat: readonly AnchorEntry[];
}

export interface LikeCordEntry {
  readonly like: "crossed cord";
  readonly interval?: AllowEntry | ChoiceEntry;
  readonly spread?: AllowEntry | ChoiceEntry;
  readonly ease?: EaseEntry;
  readonly rules?: readonly string[];
}

export interface CordEntry {
  readonly kind: "cord";
  readonly quantities: Readonly<Record<string, QuantityEntry>>;
  readonly lead: FormulaEntry;
  readonly repeat: FormulaEntry;
  readonly strands: Readonly<Record<string, StrandEntry>>;
  readonly folded?: readonly [string, string];
  readonly order?: readonly string[];
  readonly ease?: EaseEntry;
  readonly rules?: readonly string[];
}

export interface LikeCableEntry {
  readonly like: "transferred cable";
  readonly interval?: AllowEntry | ChoiceEntry;
  readonly cross?: readonly [number, number];
  readonly offset?: AllowEntry | ChoiceEntry;
  readonly "draw-in"?: string;
  readonly rules?: readonly string[];
}

interface CableBlocksEntry {
  readonly start: AnchorEntry;
  readonly "lead-in"?: readonly AnchorEntry[];
  readonly repeat: readonly AnchorEntry[];
}

export interface CableEntry {
  readonly kind: "cable";
  readonly quantities?: Readonly<Record<string, QuantityEntry>>;
  readonly lead: FormulaEntry;
  readonly repeat: FormulaEntry;
  readonly cross?: readonly [FormulaEntry, FormulaEntry];
  readonly over?: SideName;
  readonly crossings?: CableBlocksEntry;
  readonly cables?: Readonly<
    Record<
      string,
      CableBlocksEntry & { readonly cross?: readonly [FormulaEntry, FormulaEntry]; readonly over?: SideName }
    >
  >;
  readonly ladders?: readonly FormulaEntry[];
  readonly rules?: readonly string[];
  readonly limits?: Readonly<Record<string, number>>;
}

export interface BandEntry {
  readonly kind: "band";
  readonly quantities?: Readonly<Record<string, QuantityEntry>>;
  readonly stitches: FormulaEntry;
  readonly repeat: FormulaEntry;
  readonly edge?: readonly [FormulaEntry, FormulaEntry];
  readonly card?: number;
  readonly colours?: number;
  readonly rules?: readonly string[];
}

export type MotifEntry = LikeCordEntry | CordEntry | LikeCableEntry | CableEntry | BandEntry;

export interface MarginsEntry {
  readonly bottom?: AllowEntry;
  readonly top?: AllowEntry;
  readonly side?: { readonly least: number };
  readonly left?: AllowEntry;
  readonly right?: AllowEntry;
}

export interface PlacementEntry {
  readonly motif: string;
  readonly on: string;
  readonly from: string;
  readonly to: string;
  readonly repeats?: AllowEntry | ChoiceEntry;
  readonly columns?: AllowEntry | ChoiceEntry;
  readonly mirror?: boolean;
  readonly unfinished?: "plain" | "part";
  readonly gap?: AllowEntry | ChoiceEntry;
  readonly margins?: MarginsEntry;
  readonly meet?: MeetingEntry;
}

export interface MeetingEntry {
  readonly mark: string;
  readonly at: "whole" | "half" | number;
}

export interface MatchEntry {
  readonly motif: string;
  readonly on: readonly string[];
  readonly mark: string;
}
