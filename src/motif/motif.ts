import type { Path } from "../diagnostics/path.ts";
import type { Preference } from "../garment/allowed.ts";
import type { Expression } from "./expression.ts";

/** An ornament as data: quantities the fit may choose, and where its parts lie in terms of them. */
export type Motif = CordMotif | CableMotif;

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
}

/** Stitches of the ground that change places on the needles. */
export interface CableMotif extends MotifBase {
  readonly kind: "cable";
  /** Stitches that change places: those on the left and those on the right. */
  readonly cross: readonly [left: Expression, right: Expression];
  /** Which group lies nearer to the wearer's outside, as worn. */
  readonly over: "left" | "right";
  /** Each crossing's middle, in needles from the panel's centre (0 = between L1 and R1), and its row. */
  readonly crossings: Blocks;
  /** How much narrower the crossed stitches become, as a fraction of their number. */
  readonly drawIn: number;
  /** Where a warning starts; not stated means the bed's common practice. */
  readonly limits: { readonly stitches?: number; readonly rows?: number };
}

export interface Quantity extends Preference {
  readonly name: string;
  readonly unit: "rows" | "needles" | "stitches";
}

export interface Strand extends Blocks {
  readonly name: string;
}

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
