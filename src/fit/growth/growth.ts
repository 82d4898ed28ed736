import type { Reach, Trace } from "../../motif/trace.ts";
import type { FittedSection } from "../fit.ts";
import type { Term } from "../terms.ts";
import { extentsOf, wider } from "./extents.ts";

/** What a growing motif does in its field, on top of what every layout says. */
export interface Growth {
  readonly sections: readonly FittedSection[];
  readonly terms: readonly Term[];
  /** Cord stitches that each cord of one column takes, where that is read. */
  readonly used?: readonly number[];
}

/** The looks of a run of sections, one for each repeat. */
export const tracesOf = (sections: readonly FittedSection[]): readonly Trace[] =>
  sections.flatMap(({ look, repeats }) => Array.from({ length: repeats }, () => look.trace));

/** How far the whole of a growth reaches, where it reaches furthest. */
export const furthestReach = ({ sections }: Growth): Reach =>
  extentsOf(tracesOf(sections))
    .map(({ reach }) => reach)
    .reduce(wider);
