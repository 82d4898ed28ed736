import type { FittedPlacement, FittedSection } from "../fit.ts";
import type { FittedSegment } from "../looks.ts";
import { type Walk, type WalkPoint, walk } from "./walk.ts";

/** The cord between two hangings of a strand, and what a fit tells to count for it. */
export interface Stretch {
  readonly from: WalkPoint;
  /** The hanging that it ends at. */
  readonly to: WalkPoint;
  readonly needles: number;
  readonly rows: number;
  /** Undefined where nothing is told for it, which is a breach of the look's own. */
  readonly counted: FittedSegment | undefined;
}

/** The stretches of a strand over a placement's sections; where it comes from the section below, a join may count it. */
export const stretchesOf = (
  sections: readonly FittedSection[],
  points: readonly WalkPoint[],
): readonly Stretch[] =>
  points.slice(1).map((to, index) => {
    const from = points[index]!;
    const [needles, rows] = [Math.abs(from.from - to.from), to.row - from.row];
    const { look, joins } = sections[to.run]!;
    const counts = from.run === to.run ? look.segments : [...joins, ...look.segments];
    const counted = counts.find(
      (one) => one.needles === needles && one.rows === rows && one.fixed === to.count,
    );
    return { from, to, needles, rows, counted };
  });

/** One column's strands, with one repeat more where it is worked in part: what there is of it is a part of that. */
export function strandsWorked({ sections, part }: FittedPlacement): Walk["strands"] {
  const [first] = sections;
  if (!first) return [];
  const runs = sections.map(({ look: { values }, repeats }, index) => ({
    values,
    repeats: repeats + (part && index === sections.length - 1 ? 1 : 0),
  }));
  return walk(first.look.motif, runs).strands;
}
