import { pointsOver } from "./sections.ts";
import { crosses, numberAlike, type Segment, segmentKey } from "./segments.ts";
import { across, type Trace } from "./trace.ts";

/**
 * The distinct segments over which the strands come from the last repeat of one section to the first of the next,
 * by needles across and rows up.
 */
export function joiningSegments(below: Trace, above: Trace): readonly Segment[] {
  const joins = below.strands.map(({ name }) => {
    const points = pointsOver(
      [
        { trace: below, repeats: 1 },
        { trace: above, repeats: 1 },
      ],
      (trace) => trace.strands.find((strand) => strand.name === name)!,
    );
    const first = points.findIndex(({ section }) => section === 1);
    return first < 1 ? undefined : ([points[first - 1]!, points[first]!] as const);
  });
  const found = new Map<string, Segment>();
  joins.forEach((join, index) => {
    if (!join) return;
    const [from, to] = join;
    const [needles, rows] = [across(from, to), to.row - from.row];
    const key = segmentKey(needles, rows);
    const climbs = joins.slice(0, index).filter((other) => other && crosses(join, other)).length;
    found.set(key, {
      name: "join",
      needles,
      rows,
      climbs: Math.max(climbs, found.get(key)?.climbs ?? 0),
    });
  });
  return numberAlike([...found.values()]);
}
