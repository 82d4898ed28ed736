import type { CountedPiece } from "../cloth/counted-piece.ts";
import type { Garment } from "../garment/garment.ts";
import type { Motif } from "../motif/motif.ts";
import type { Trace, Values } from "../motif/trace.ts";
import type { FittedSegment } from "./looks.ts";
import type { Panel } from "./panel.ts";
import { costOf, type Term } from "./terms.ts";

/** A fit: what was chosen, in the garment's own needles and rows. Plain data; nothing in it knows the program. */
export interface Fit {
  readonly garment: Garment;
  readonly cost: number;
  readonly terms: readonly Term[];
  readonly looks: readonly FittedLook[];
  readonly placements: readonly FittedPlacement[];
  /** Pieces as they will be knitted, in the order of the file. */
  readonly pieces: readonly CountedPiece[];
}

export interface FittedLook {
  readonly motif: Motif;
  readonly values: Values;
  /** The motif worked out for these values. */
  readonly trace: Trace;
  readonly segments: readonly FittedSegment[];
}

export interface FittedPlacement {
  /** Index among the garment's placements. */
  readonly index: number;
  readonly piece: string;
  readonly motif: string;
  /** What is worked from the bottom up; one section, unless the look changes on the way. */
  readonly sections: readonly FittedSection[];
  /** Whole repeats of all sections together. */
  readonly repeats: number;
  readonly columns: number;
  readonly gap: number;
  /** Rows by which the field became longer (above 0) or shorter. */
  readonly change: number;
  /** Rows knitted when the first and the last hanging are made. */
  readonly firstRow: number;
  readonly lastRow: number;
  readonly margins: FittedMargins;
  readonly panel: Panel;
  /** What is worked of one repeat more, where the garment asks for it and anything of it can be. */
  readonly part?: FittedPart;
}

/** As much of one repeat as there is room for above the last whole one. */
export interface FittedPart {
  /** Row at which the last of it is done, and its rows above the last whole repeat. */
  readonly lastRow: number;
  readonly rows: number;
  /** By column: how many hangings or crossings each strand or cable makes of it. None for a band. */
  readonly columns: readonly Readonly<Record<string, number>>[];
}

/** So many whole repeats with one look. The first section of a placement brings the lead-in, and may be only that. */
export interface FittedSection {
  readonly look: FittedLook;
  readonly repeats: number;
  /**
   * Counts of the stretches over which the strands come from the section below, as far as the look has none for
   * them; none in the first section.
   */
  readonly joins: readonly FittedSegment[];
}

export interface FittedMargins {
  readonly bottom: number;
  readonly top: number;
  /** At the narrowest row of the motif. */
  readonly left: number;
  readonly right: number;
}

export const lookOf = (fit: Fit, motif: string): FittedLook =>
  fit.looks.find((look) => look.motif.name === motif)!;

export const pieceOf = (fit: Fit, name: string): CountedPiece =>
  fit.pieces.find((piece) => piece.name === name)!;

export const withCost = (fit: Omit<Fit, "cost">): Fit => ({ ...fit, cost: costOf(fit.terms) });
