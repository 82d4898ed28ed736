import { pointsOver } from "./sections.ts";
import { crosses, numberAlike, type Segment, segmentKey } from "./segments.ts";
import { across, liesOver, type Trace } from "./trace.ts";

/**
 * The distinct segments over which the strands come from the last repeat of one section to the first of the next,
 * by needles across and rows up.
 *
 * @param repeats 0 where the section below is no more than the lead-in
 */
export function joiningSegments(below: Trace, above: Trace, repeats: 0 | 1 = 1): readonly Segment[] {
  const joins = below.strands.map(({ name }) => {
    const points = pointsOver(
      [
        { trace: below, repeats },
        { trace: above, repeats: 1 },
      ],
      "strands",
      name,
    );
    const first = points.findIndex(({ section }) => section === 1);
    return first < 1 ? undefined : ([points[first - 1]!, points[first]!] as const);
  });
  const found = new Map<string, Segment>();
  joins.forEach((join) => {
    if (!join) return;
    const [from, to] = join;
    const [needles, rows] = [across(from, to), to.row - from.row];
    const key = segmentKey(needles, rows, to.count);
    const climbs = joins.filter((other) => other && crosses(join, other) && liesOver(to, other[1])).length;
    found.set(key, {
      name: "join",
      needles,
      rows,
      climbs: Math.max(climbs, found.get(key)?.climbs ?? 0),
      ...(to.count !== undefined && { fixed: to.count }),
    });
  });
  return numberAlike([...found.values()]);
}
