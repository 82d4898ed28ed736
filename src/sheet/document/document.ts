import type { Side } from "../../garment/garment.ts";
import type { ShapingPassage } from "../shaping/shaping-passages.ts";

/** Everything the working sheet says, in the order in which it is said; how it looks is the renderers' matter. */
export interface SheetDocument {
  readonly title: string;
  /** What comes before the pieces. */
  readonly sections: readonly Section[];
  readonly pieces: readonly PieceSection[];
  readonly finish: Section;
}

export interface Section {
  readonly title: string;
  readonly content: readonly Content[];
}

export type Content = Paragraph | Facts | Table;

export interface Paragraph {
  readonly kind: "paragraph";
  readonly text: string;
}

/** Numbers that are looked up, each under its name. */
export interface Facts {
  readonly kind: "facts";
  readonly facts: readonly Fact[];
}

export interface Fact {
  readonly name: string;
  readonly value: string;
}

/** The first cell of each row names it. */
export interface Table {
  readonly kind: "table";
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** One piece, as it is worked. */
export interface PieceSection {
  readonly piece: string;
  readonly needles: Facts;
  readonly castOn: readonly Paragraph[];
  readonly blocks: readonly Block[];
}

/** Rows that are worked one after the other; the two halves above a neck are a block each. */
export interface Block {
  readonly part: ShapingPassage["block"];
  /** Absent where the piece has no other block. */
  readonly title?: string;
  /** What to do or to know before the block's first row. */
  readonly before: readonly Paragraph[];
  /** The block's shaping as knitters say it; it stands at its rows as well. */
  readonly shaping: readonly string[];
  readonly lines: readonly WorkLine[];
}

/** One line of what is done, or of plain knitting between. */
export type WorkLine = KnitLine | DoLine;

export interface KnitLine {
  readonly kind: "knit";
  readonly rows: number;
  readonly toRow: number;
  /** Where the carriage rests after the last of them. */
  readonly carriage: Side;
}

export interface DoLine {
  readonly kind: "do";
  /** Rows knitted when it is done. */
  readonly row: number;
  readonly carriage: Side;
  /** In working order. */
  readonly phrases: readonly string[];
  /** Where in their repeats the motifs worked on this row are: "repeat 3 of 8, row 4 of 8"; empty where none is. */
  readonly running: readonly string[];
}

export const paragraph = (text: string): Paragraph => ({ kind: "paragraph", text });
