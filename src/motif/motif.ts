import type { Path } from "../diagnostics/path.ts";
import type { Preference } from "../garment/allowed.ts";
import type { Expression } from "./expression.ts";

/** An ornament as data: quantities the fit may choose, and where its parts lie in terms of them. */
export type Motif = CordMotif | CableMotif | BandMotif;

interface MotifBase {
  readonly name: string;
  /** Where the motif stands in the garment file. */
  readonly path: Path;
  /** The built-in motif it was made from, where it was. */
  readonly like?: string;
  readonly quantities: readonly Quantity[];
  /** Rows worked once before the first repeat. */
  readonly lead: Expression;
  /** Rows of one repeat. */
  readonly repeat: Expression;
  /** Comparisons that a look must keep, such as `spread <= interval + 2`. */
  readonly rules: readonly Rule[];
}

/** Strands of knitted cord laid on the side that faces the knitter and caught on needles. */
export interface CordMotif extends MotifBase {
  readonly kind: "cord";
  readonly strands: readonly Strand[];
  /** Pairs of strands that are the two arms of one cord, hung from its middle. */
  readonly folded: readonly (readonly [string, string])[];
  /** Order of work within a row, by strand name; a later strand lies over an earlier one. */
  readonly order: readonly string[];
  readonly ease: EaseLimits;
  /** Spare cord, as a fraction of what is used (0.15 = 15 %). */
  readonly reserve: number;
  /** Cord stitches from one thread that is laid in to make counting easy to the next. */
  readonly markerEvery: number;
}

/** Stitches of the ground that change places on the needles: one cable, or several side by side. */
export interface CableMotif extends MotifBase {
  readonly kind: "cable";
  readonly cables: readonly Cable[];
  /** Needles from the panel's centre that stand out of work as long as the motif goes on. */
  readonly ladders: readonly Expression[];
  /** How much narrower the crossed stitches become, as a fraction of their number. */
  readonly drawIn: number;
  /** Where a warning starts; not stated means the bed's common practice. */
  readonly limits: { readonly stitches?: number; readonly rows?: number };
}

/** The blocks hold each crossing's middle, in needles from the panel's centre (0 = between L1 and R1), and its row. */
export interface Cable extends Blocks {
  readonly name: string;
  /** Stitches that change places: those on the left and those on the right. */
  readonly cross: readonly [left: Expression, right: Expression];
  /** Which group lies nearer to the wearer's outside, as worn. */
  readonly over: "left" | "right";
}

/** A pattern of so many stitches by so many rows, whole across and whole upward: a card's, or worked by hand. */
export interface BandMotif extends MotifBase {
  readonly kind: "band";
  /** Stitches of one repeat. */
  readonly stitches: Expression;
  /** Stitches at the left and the right end that belong to no repeat. */
  readonly edge: readonly [left: Expression, right: Expression];
  /** Stitches of the card that holds the pattern, where one does. */
  readonly card?: number;
  /** Colours in a repeat; more than one change at an even number of rows only. */
  readonly colours: number;
}

export interface Quantity extends Preference {
  readonly name: string;
  readonly unit: "rows" | "needles" | "stitches" | "strands";
  /** Most by which it may change from one repeat to the next; one value all the way where it is not stated. */
  readonly change?: number;
}

export interface Strand extends Blocks {
  readonly name: string;
  /** Where it stands for several strands, called "name 1", "name 2" and so on. */
  readonly each?: Each;
  /** The strand whose anchors it goes on with in the next repeat; its own where that is not stated. */
  readonly next?: Successor;
}

/** Numbers from one to another; in the expressions of what is numbered, `index` is its own. */
export interface Each {
  readonly index: string;
  readonly from: Expression;
  readonly to: Expression;
}

/** Another strand by its name, or one of the same numbered strands by its number. */
export type Successor = { readonly strand: string; readonly path: Path } | { readonly number: Expression };

/** Anchors of the three blocks of a motif; rows count from the start of the block. */
export interface Blocks {
  readonly start: Anchor;
  readonly leadIn: readonly Anchor[];
  readonly repeat: readonly Anchor[];
}

export interface Anchor {
  /** For a strand a needle from the panel's centre (no 0); for a crossing the middle of it. */
  readonly needle: Expression;
  readonly row: Expression;
  /** Cord stitches to count up to this hanging, whatever the ease: the stretch stands off as a loop. */
  readonly count?: Expression;
  /** Place in the order of work of its row, before the motif's own order; 0 where it is not stated. */
  readonly turn?: Expression;
  /** For a crossing: which group lies over, where it is not the cable's own. */
  readonly over?: "left" | "right";
}

export interface Rule {
  readonly left: Expression;
  readonly comparison: "<" | "<=" | "=" | ">=" | ">";
  readonly right: Expression;
  readonly source: string;
  readonly path: Path;
}

/** Limits and preference of the cord's ease, as fractions (0.02 = 2 %). */
export interface EaseLimits {
  readonly from: number;
  readonly to: number;
  readonly prefer?: number;
}
