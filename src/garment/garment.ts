import type { Path } from "../diagnostics/path.ts";
import type { Motif } from "../motif/motif.ts";
import type { Allowed, Preference } from "./allowed.ts";

/** A garment file as read: every length in millimetres, every name resolved, nothing yet counted in needles. */
export interface Garment {
  readonly title: string;
  readonly bed: Bed;
  readonly gauge: Gauge;
  /**
   * The share of what the swatch leaves open of the gauge over which ease and length have to keep their limits
   * (1 = all of it); absent where they have to at the gauge as it is told.
   */
  readonly steady?: number;
  readonly yarn: Yarns;
  readonly onHand?: OnHand;
  readonly wearer?: Wearer;
  readonly pieces: readonly Piece[];
  /** Only the motifs written in the file, each complete: what `like` took from a built-in one is filled in. */
  readonly motifs: readonly Motif[];
  readonly placements: readonly Placement[];
  /** Placements whose motifs stand alike at a mark, so that the ornament runs on across a seam. */
  readonly matches: readonly Match[];
  readonly weights: Weights;
}

/** Garments of one file that differ in their size, in the order of the file. */
export interface SizeRange {
  /** Of the file; each size's garment adds its own name. */
  readonly title: string;
  /** At least one. */
  readonly sizes: readonly SizedGarment[];
  /** What is alike in every size; nothing where it is left out. */
  readonly share?: Share;
}

/** The garment in one of its sizes: the same bed, gauge, motifs and weights, with pieces (and a wearer) of its own. */
export interface SizedGarment {
  readonly name: string;
  readonly path: Path;
  readonly garment: Garment;
}

export interface Share {
  readonly path: Path;
  /** Quantities of motifs by name, and whether the counts of the cord are among what is shared. */
  readonly quantities: readonly string[];
  readonly pickup: boolean;
}

export type Side = "left" | "right";

export interface Bed {
  /** Needles on the bed, both sides of the centre together. */
  readonly needles: number;
  readonly pitchMm?: number;
  /** Where the carriage rests before the first row of a piece that does not say so itself. */
  readonly carriage: Side;
}

export interface Gauge {
  readonly ground: GroundGauge;
  readonly cord?: CordGauge;
}

export interface GroundGauge {
  readonly stitches: number;
  readonly rows: number;
  /** The length, in mm, over which `stitches` were counted, and that `rows` are told for. */
  readonly overMm: number;
  /** Rows as they were counted, where that was over another length in mm than the stitches. */
  readonly rowsCounted?: { readonly rows: number; readonly overMm: number };
  /** How far off either count may be, as fractions (0.02 = 2 %), where the file says so. */
  readonly within?: { readonly stitches?: number; readonly rows?: number };
}

export interface CordGauge {
  /** Needles the cord is knitted on. */
  readonly needles: number;
  readonly stitches: number;
  /** The length of cord, in mm, over which `stitches` were counted. */
  readonly overMm: number;
  /** How far off that may be, as a fraction, where the file says so. */
  readonly within?: number;
  /** How thick the cord is, where a strand that lies over another has to climb it. */
  readonly thicknessMm?: number;
}

export interface Yarns {
  readonly ground?: Yarn;
  readonly cord?: Yarn;
}

/** What is known of a yarn; at least one of the two. */
export interface Yarn {
  /** Linear density: grams per 1000 m (ISO 1144). */
  readonly tex?: number;
  readonly swatch?: WeighedSwatch;
}

/** A swatch that was weighed, without its tails and waste yarn. */
export interface WeighedSwatch {
  /** Every stitch of the swatch: for the ground stitches times rows, for a cord its cord stitches. */
  readonly stitches: number;
  readonly grams: number;
}

/** What there is of cord and yarn, which all pieces together may not exceed; at least one supply. */
export interface OnHand {
  readonly supplies: readonly Supply[];
  /** Whether as little as can be is to be left over. */
  readonly leastWaste: boolean;
}

/** What a supply is of: finished cord, the yarn of the cord or of the ground, or one yarn for both. */
export type SupplyOf = "cord" | "cord yarn" | "ground yarn" | "yarn";

export interface Supply extends Stock {
  readonly path: Path;
  readonly of: SupplyOf;
  /** Where it is told in balls: how many, and what each of them is. */
  readonly balls?: { readonly count: number; readonly each: Stock };
}

/** So much of something, in metres or in grams; of finished cord in metres. */
export interface Stock {
  readonly amount: number;
  readonly unit: "m" | "g";
}

/** Who will wear the garment, as far as the file says. */
export interface Wearer {
  readonly path: Path;
  readonly ageYears?: number;
  readonly heightMm?: number;
}

/** Where on the body a piece lies. */
export type BodyPart = (typeof BODY_PARTS)[number];

export const BODY_PARTS = ["hood", "collar", "front", "back", "sleeve", "other"] as const;

/** Rows on which single stitches may be added or taken away. */
type ShapingRows = (typeof SHAPING_ROWS)[number];

export const SHAPING_ROWS = ["any row", "even rows"] as const;

export interface Piece {
  readonly name: string;
  readonly path: Path;
  /** How many of it are knitted, all alike; one where it is left out. */
  readonly make?: number;
  /** Where on the body it lies, where the file says so. */
  readonly part?: BodyPart;
  /** From the cast-on edge upward; the first stands at height 0. */
  readonly outline: readonly Station[];
  /** Named heights; `cast-on`, `bind-off` and, where there is one, `neck` are among them. */
  readonly marks: readonly Mark[];
  /** The opening cut out around the centre, from its lowest height up; empty where there is none. */
  readonly neck: readonly NeckStation[];
  /** The rows on which single stitches are added or taken away; any where it is left out. */
  readonly shapingOn?: ShapingRows;
  /** Where the outline comes from, if it is not written under `outline`: what is wrong with it is told there. */
  readonly outlinePath?: Path;
  readonly growMm: number;
  readonly shrinkMm: number;
  /** Whether the file states one of the two; a length of which it says nothing has no limits that a steady fit can keep. */
  readonly limitsLength?: boolean;
  readonly carriage: Side;
}

/** The outline at one height: a full width about the centre, or each side's distance from the centre line. */
export type Station =
  | { readonly heightMm: number; readonly widthMm: number }
  | { readonly heightMm: number; readonly leftMm: number; readonly rightMm: number };

export interface NeckStation {
  readonly heightMm: number;
  readonly widthMm: number;
}

export interface Mark {
  readonly name: string;
  readonly heightMm: number;
}

/** One motif laid on one piece, between two marks. */
export interface Placement {
  readonly path: Path;
  readonly motif: string;
  readonly piece: string;
  readonly from: string;
  readonly to: string;
  readonly repeats: Preference;
  readonly columns: Preference;
  /** Needles between two columns. */
  readonly gap: Preference;
  readonly margins: Margins;
  /** Where the motif has to stand in its repeat at marks within its field. */
  readonly meet: readonly Meeting[];
  /** Columns right of the centre are the mirror image of those left of it. */
  readonly mirror: boolean;
  /** What is done above the last whole repeat. */
  readonly unfinished: Unfinished;
}

/** A repeat that cannot be finished: left out, so that the rows stay plain, or worked as far as it goes. */
type Unfinished = "plain" | "part";

/** What a motif has to be at, at a mark. */
export interface Meeting {
  readonly mark: string;
  readonly at: Phase;
}

/** How far a motif is in its repeat: at its end and beginning, at its middle, or so many rows from its beginning. */
export type Phase = "whole" | "half" | { readonly rows: number };

/** Placements of one motif, on two or more pieces, that are equally far in their repeat at a mark of that name. */
export interface Match {
  readonly path: Path;
  readonly mark: string;
  /** Indexes among the garment's placements, at least two. */
  readonly placements: readonly number[];
}

/** Rows (bottom, top) and needles (sides) left between the motif and the edge of its field. */
export interface Margins {
  readonly bottom: Allowed;
  readonly top: Allowed;
  readonly sides: SideMargins;
}

/** Either the panel is centred and keeps a least margin at both sides, or each side's margin has its own range. */
export type SideMargins =
  | { readonly kind: "centred"; readonly least: number }
  | { readonly kind: "free"; readonly left: Allowed; readonly right: Allowed };

/** Cost of one unit of each named term; a term that is not listed weighs `defaultWeight`. */
export type Weights = Readonly<Record<string, number>>;
