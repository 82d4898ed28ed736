import type { FittedPlacement, FittedSection } from "../fit/fit.ts";
import type { FittedSegment } from "../fit/looks.ts";
import { growingQuantity } from "../motif/growing-quantity.ts";
import { pointsOver } from "../motif/sections.ts";
import { segmentKey } from "../motif/segments.ts";
import { across } from "../motif/trace.ts";
import { counted } from "./words.ts";

/** How a growing motif's quantity goes upward: "spread 10 for 1 repeat, 12 for 6"; undefined for one that stays alike. */
export function growthWords({ sections }: FittedPlacement): string | undefined {
  const quantity = sections[0] && growingQuantity(sections[0].look.motif);
  if (!quantity) return undefined;
  const stays = sections.map(({ look, repeats }, index) => {
    const value = look.values.get(quantity.name)!;
    return `${value} for ${index === 0 ? counted(repeats, "repeat") : repeats}`;
  });
  return `${quantity.name} ${stays.join(", ")}`;
}

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
