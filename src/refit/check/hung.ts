import { stretchesOf } from "../../fit/check/stretch.ts";
import { type WalkPoint, walk } from "../../fit/check/walk.ts";
import type { FittedPlacement } from "../../fit/fit.ts";

/** One hanging or crossing of a column, with the cord stitches counted to it. */
export interface Hung extends WalkPoint {
  readonly strand: string;
  /** 0 at a strand's first hanging; absent for a crossing. */
  readonly pickup?: number;
}

/** All hangings or crossings of one column of a placement, rows counted from the piece's cast-on. */
export function hungOn({ sections, firstRow }: FittedPlacement): readonly Hung[] {
  const [first] = sections;
  if (!first) return [];
  const { motif } = first.look;
  const runs = sections.map(({ look: { values }, repeats }) => ({ values, repeats }));
  return walk(motif, runs).strands.flatMap(({ name, points }) => {
    const stretches = stretchesOf(sections, points);
    return points.map((point, index): Hung => {
      const hung = { ...point, row: firstRow + point.row, strand: name };
      if (motif.kind !== "cord") return hung;
      const to = stretches[index - 1];
      return { ...hung, pickup: to ? (to.counted?.pickup ?? Number.NaN) : 0 };
    });
  });
}
