import type { Path } from "../diagnostics/path.ts";
import type { Allowed } from "../garment/allowed.ts";

/** What a rule allows, in the form in which its values are counted. */
export type RuleAllows =
  /** Whole numbers out of a set. */
  | { readonly kind: "values"; readonly allowed: Allowed; readonly least: number; readonly most: number }
  /** A number that is a lower limit by itself. */
  | { readonly kind: "least"; readonly value: number }
  /** A number that is an upper limit by itself. */
  | { readonly kind: "most"; readonly value: number; readonly least: number; readonly greatest: number }
  /** A length up to which something may go; it counts in whole rows of `rowMm`. */
  | { readonly kind: "length"; readonly mm: number; readonly rowMm: number }
  /** Fractions (0.02 = 2 %). */
  | { readonly kind: "ease"; readonly from: number; readonly to: number }
  /** A comparison between quantities, as it is written. */
  | { readonly kind: "comparison"; readonly source: string };

/** The parts of a rule that can be changed one by one. */
export type RuleField = "from" | "to" | "prefer" | "weight";

/** One rule of a garment as a knitter would point at it. */
export interface GarmentRule {
  /** The path, joined by dots: the same rule keeps it when the garment changes. */
  readonly id: string;
  readonly path: Path;
  readonly name: string;
  /** What it is a rule of: a motif, a motif on a piece, a piece or the bed. */
  readonly owner: string;
  readonly unit: string;
  readonly allows: RuleAllows;
  /** For an ease a fraction, else a number in the rule's unit. */
  readonly prefer?: number;
  /** The term of the cost that this rule's preference makes, and what one unit of it costs. */
  readonly weight?: { readonly term: string; readonly value: number };
  /** The fields that it has, in the order in which they are shown. */
  readonly fields: readonly RuleField[];
  /** Motif and placement that it is read from in a fit. */
  readonly motif?: string;
  readonly placement?: number;
}

/** A rule is held fast where it allows one value and no other. */
export const isHeld = ({ allows }: GarmentRule): boolean =>
  allows.kind === "values" && allows.allowed.kind === "list" && allows.allowed.values.length === 1;
