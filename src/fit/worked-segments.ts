import { pointsOver } from "../motif/sections.ts";
import { segmentKey } from "../motif/segments.ts";
import { across } from "../motif/trace.ts";
import type { FittedSection } from "./fit.ts";
import type { FittedSegment } from "./looks.ts";

/** The stretches of cord that are worked in each section: the lead-in's in the first only, a join's where it is. */
export function workedSegments(sections: readonly FittedSection[]): readonly (readonly FittedSegment[])[] {
  const runs = sections.map(({ look: { trace }, repeats }) => ({ trace, repeats }));
  const worked = sections.map(() => new Set<string>());
  for (const { name } of runs[0]?.trace.strands ?? []) {
    const points = pointsOver(runs, "strands", name);
    for (const [index, to] of points.slice(1).entries()) {
      const from = points[index]!;
      worked[to.section]!.add(segmentKey(across(from, to), to.row - from.row, to.count));
    }
  }
  return sections.map(({ look, joins }, index) =>
    [...joins, ...look.segments].filter(({ needles, rows, fixed }) =>
      worked[index]!.has(segmentKey(needles, rows, fixed)),
    ),
  );
}
