import type { SideName } from "./garment-file.ts";

/** One piece of a working sheet `evenrow-sheet/1`, as its JSON has it. Needles are signed, without a 0. */
export interface SheetPiece {
  readonly piece: string;
  readonly needles_at_start: NeedleSpan;
  readonly rows: readonly SheetRow[];
}

/** Leftmost and rightmost needle, both included. */
export type NeedleSpan = readonly [number, number];

export interface SheetRow {
  /** Rows knitted when the actions are done. */
  readonly row: number;
  readonly carriage: SideName;
  /** Needles in work after the actions; nothing (absent, null or empty) where none is. */
  readonly needles?: NeedleSpan | readonly [] | null;
  readonly do: readonly SheetAct[];
}

interface OfStrand {
  readonly strand: string;
  readonly needle: number;
  readonly motif?: string;
  /** Counted from 1 at the left; 1 where it is left out. */
  readonly column?: number;
  /** Tells two placements of one motif on one piece apart. */
  readonly placement?: number;
}

export type SheetAct =
  | { readonly act: "cast-on"; readonly from: number; readonly to: number }
  | { readonly act: "cast-on"; readonly side: SideName; readonly needles: number }
  | { readonly act: "increase"; readonly side: SideName; readonly needles: number }
  | { readonly act: "decrease"; readonly side: SideName; readonly needles: number }
  | { readonly act: "bind-off"; readonly side: SideName; readonly needles: number }
  | { readonly act: "bind-off"; readonly from: number; readonly to: number; readonly yarn?: "separate" }
  | ({ readonly act: "hang"; readonly count: number; readonly loop?: true } & OfStrand)
  | ({ readonly act: "finish"; readonly loops?: number } & OfStrand)
  | {
      readonly act: "cross";
      readonly from: number;
      readonly to: number;
      readonly left: number;
      readonly right: number;
      readonly over: SideName;
      readonly motif?: string;
      readonly column?: number;
    }
  | { readonly act: "out"; readonly needle: number; readonly onto: number }
  | { readonly act: "in"; readonly needle: number; readonly from: number }
  | {
      readonly act: "pattern";
      readonly from: number;
      readonly to: number;
      readonly repeat: number;
      readonly repeats: number;
      readonly rows: number;
      readonly unfinished?: true;
      readonly stitches: number;
      readonly across: number;
      readonly edge: { readonly left: number; readonly right: number };
      readonly card?: { readonly row: number; readonly stitch: number; readonly stitches: number };
      readonly motif: string;
      readonly placement: number;
    }
  | {
      readonly act: "plain";
      readonly from: number;
      readonly to: number;
      readonly motif: string;
      readonly placement: number;
    }
  | { readonly act: "hold"; readonly from: number; readonly to: number }
  | { readonly act: "work"; readonly from: number; readonly to: number };
