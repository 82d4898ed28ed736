import type { Fit } from "../fit/fit.ts";
import type { FitResult } from "../fit/solve.ts";
import type { SizeRange } from "../garment/garment.ts";
import type { SharedLook } from "./shared-look.ts";

/** What came of looking for a fit of every size. */
export type RangeResult = RangeFits | RangeDoesNotFit | Extract<FitResult, { status: "stopped" }>;

export interface RangeFits {
  readonly status: "fits";
  readonly range: SizeRange;
  /** In the order of the file. */
  readonly sizes: readonly FittedSize[];
  /** Sum over the sizes, each weighed as if it were alone. */
  readonly cost: number;
  /** Whether it is certain that nothing costs less while the sizes share what they are to share. */
  readonly proven: boolean;
  readonly bound: number;
  /** The next best looks to share; none where nothing is shared. */
  readonly rivals: readonly RangeRival[];
  readonly rivalsProven: boolean;
  /** What it would gain to leave one size out of what is shared; none where nothing is shared or no advice is asked for. */
  readonly dropping: readonly Dropped[];
  /** Nodes for the best fit alone, and for all that is told beside it too. */
  readonly bestNodes: number;
  readonly nodes: number;
  readonly notes: readonly string[];
}

export interface FittedSize {
  readonly name: string;
  readonly fit: Fit;
  /** The best fit of this size by itself, free to look as it likes; missing where it was not asked for or not found. */
  readonly alone?: { readonly cost: number; readonly proven: boolean };
}

export interface RangeRival {
  readonly cost: number;
  readonly looks: readonly SharedLook[];
  /** In the order of the sizes. */
  readonly fits: readonly Fit[];
}

export interface Dropped {
  readonly size: string;
  /** By how much all sizes together would give up less, this one with a look of its own and the others sharing theirs. */
  readonly gain: number;
  /** What the others would share then, where that would gain anything. */
  readonly looks?: readonly SharedLook[];
  readonly proven: boolean;
}

export interface RangeDoesNotFit {
  readonly status: "does not fit";
  readonly range: SizeRange;
  /** Sizes that do not fit even by themselves. */
  readonly misfits: readonly string[];
  /** Where each fits by itself: the sizes any one of which, left out, lets the others share. */
  readonly freeing: readonly string[];
  /** Where no single one does: sizes that cannot share, though without any one of them the rest of them could. */
  readonly clash: readonly string[];
  readonly nodes: number;
  readonly notes: readonly string[];
}

/** What the shared look costs a size; undefined where it is not known. */
export const givenUp = ({ fit, alone }: FittedSize): number | undefined => alone && fit.cost - alone.cost;
