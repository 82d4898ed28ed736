import type { NeedleRange } from "../cloth/bed.ts";
import type { Side } from "../garment/garment.ts";

/** A working sheet: what to do at which row, in working order. */
export interface Sheet {
  readonly pieces: readonly SheetPiece[];
}

export interface SheetPiece {
  readonly piece: string;
  /** How many of it are knitted, said where it is not one. */
  readonly make?: number;
  readonly needlesAtStart: NeedleRange;
  /** Rows of the whole piece; a neck is worked twice from its own row to here. */
  readonly rowsInAll: number;
  /** Only the rows at which something is done; those between are plain. */
  readonly rows: readonly SheetRow[];
}

export interface SheetRow {
  /** Rows knitted when the actions are done (0 = none yet). */
  readonly row: number;
  /** Where the carriage rests then. */
  readonly carriage: Side;
  /** Needles in work after the row's actions; none once all are bound off. */
  readonly needles: NeedleRange | readonly [];
  readonly do: readonly Action[];
}

export type Action = ShapingAction | OrnamentAction;

type ShapingAction =
  | { readonly act: "cast-on"; readonly from: number; readonly to: number }
  | ({ readonly act: "cast-on"; readonly needles: number } & AtSide)
  | ({ readonly act: "increase"; readonly needles: 1 } & AtSide)
  | ({ readonly act: "decrease"; readonly needles: 1 } & AtSide)
  | ({ readonly act: "bind-off"; readonly needles: number } & AtSide)
  /** The stitches at the centre of a neck, with a length of yarn of their own. */
  | { readonly act: "bind-off"; readonly from: number; readonly to: number; readonly yarn: "separate" }
  /** All that is in work. */
  | { readonly act: "bind-off"; readonly from: number; readonly to: number }
  /** Out of work for now, stitches kept. */
  | { readonly act: "hold"; readonly from: number; readonly to: number }
  /** Back to work after holding. */
  | { readonly act: "work"; readonly from: number; readonly to: number };

/** What a motif asks for. */
export type OrnamentAction =
  | HangAction
  | FinishAction
  | CrossAction
  | OutAction
  | InAction
  | PatternAction
  | PlainAction;

/** `edge` is said where it is the neck's and not the piece's outer one. */
interface AtSide {
  readonly side: Side;
  readonly edge?: "neck";
}

export interface HangAction {
  readonly act: "hang";
  readonly strand: string;
  /** Cord stitches counted from the strand's last hanging; 0 at its first. */
  readonly count: number;
  readonly needle: number;
  /** At the middle of a folded cord, where both of its arms begin. */
  readonly folded?: true;
  /** The strand that is the other arm, said with `folded`. */
  readonly with?: string;
  /** The stretch counted stands off as a loop. */
  readonly loop?: true;
  readonly motif: string;
  /** Counts from 1 in the order of the file. */
  readonly placement: number;
  /** Counts from 1 at the left. */
  readonly column: number;
}

/** How a strand's end is closed after its last hanging. */
export interface FinishAction {
  readonly act: "finish";
  readonly strand: string;
  readonly how: "unravel" | "cut";
  /** Open loops to hang: as many as the cord has needles. */
  readonly loops: number;
  readonly needle: number;
  readonly motif: string;
  readonly placement: number;
  readonly column: number;
}

export interface CrossAction {
  readonly act: "cross";
  readonly from: number;
  readonly to: number;
  /** Stitches of the left and of the right group. */
  readonly left: number;
  readonly right: number;
  /** The group that lies in front as worn. */
  readonly over: Side;
  readonly motif: string;
  readonly placement: number;
  readonly column: number;
}

interface OfColumn {
  readonly motif: string;
  readonly placement: number;
  /** 1 for a pattern, whose repeats stand side by side as one. */
  readonly column: number;
}

/** A needle goes out of work, and what is knitted past it becomes a ladder. */
export interface OutAction extends OfColumn {
  readonly act: "out";
  readonly needle: number;
  /** The neighbour that takes its stitch. */
  readonly onto: number;
}

/** The needle of a ladder comes back to work, empty. */
export interface InAction extends OfColumn {
  readonly act: "in";
  readonly needle: number;
  /** The neighbour from whose stitch below a loop is lifted onto it. */
  readonly from: number;
}

/** From here a pattern is knitted on some needles; said again at the first row of each of its repeats. */
export interface PatternAction extends OfColumn {
  readonly act: "pattern";
  /** The needles of all repeats and of the edge stitches. */
  readonly from: number;
  readonly to: number;
  /** Counts from 1 upward. */
  readonly repeat: number;
  readonly repeats: number;
  /** Rows of the repeat that are worked: all of them, unless it is unfinished. */
  readonly rows: number;
  readonly unfinished?: true;
  /** Stitches of one repeat, and how many stand side by side. */
  readonly stitches: number;
  readonly across: number;
  readonly edge: { readonly left: number; readonly right: number };
  readonly card?: {
    /** Row of the card to start at, from 1. */
    readonly row: number;
    /** Stitch of the card that meets the first stitch of the first repeat, from 1 at the left. */
    readonly stitch: number;
    readonly stitches: number;
  };
}

/** The pattern ends; all needles knit plain. */
export interface PlainAction extends OfColumn {
  readonly act: "plain";
  readonly from: number;
  readonly to: number;
}
