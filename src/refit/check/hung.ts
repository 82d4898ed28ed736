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
  return walk(motif, runs).strands.flatMap(({ name, points }) =>
    points.map((point, index): Hung => {
      const row = firstRow + point.row;
      if (motif.kind !== "cord") return { ...point, row, strand: name };
      const from = points[index - 1];
      if (!from) return { ...point, row, strand: name, pickup: 0 };
      const { look, joins } = sections[point.run]!;
      const counted = [...(from.run === point.run ? [] : joins), ...look.segments].find(
        ({ needles, rows }) => needles === Math.abs(from.from - point.from) && rows === point.row - from.row,
      );
      return { ...point, row, strand: name, pickup: counted?.pickup ?? Number.NaN };
    }),
  );
}
