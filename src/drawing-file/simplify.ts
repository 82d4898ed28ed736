/**
 * Which of a row of points have to be kept so that none of those left out is further than the tolerance from the
 * straight piece that takes its place (Douglas and Peucker 1973). Ends are kept.
 *
 * @param off how far the point at `index` lies from the straight piece between two others, in the tolerance's unit
 * @returns indices of the points that are kept, rising
 */
export function keptPoints(
  count: number,
  tolerance: number,
  off: (index: number, from: number, to: number) => number,
): number[] {
  const keep = new Set([0, Math.max(0, count - 1)]);
  const open: [number, number][] = [[0, count - 1]];
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const [from, to] = span;
    let [worst, at] = [tolerance, -1];
    for (let index = from + 1; index < to; index++) {
      const distance = off(index, from, to);
      if (distance > worst) [worst, at] = [distance, index];
    }
    if (at < 0) continue;
    keep.add(at);
    open.push([from, at], [at, to]);
  }
  return [...keep].sort((a, b) => a - b);
}
