import type { Bounds, GaugeRange } from "../cloth/gauge-range.ts";
import { easeOf, spanMm } from "./path-length.ts";
import type { Segment } from "./segments.ts";

type Stretch = Omit<Segment, "name">;

/**
 * The shortest and the longest that a segment's path may be over a range of gauges, in mm, exactly.
 *
 * The straight line `s = hypot(needles * width, rows * height)` grows with width and height alike, so it lies between
 * its lengths at the two ends of both. With what it climbs over `c` strands of thickness `t` the path is
 * `f(s) = s + 2c (hypot(s/2, t) - s/2)`. Its slope `1 - c (1 - (s/2) / hypot(s/2, t))` rises with s, so f is convex and
 * longest at an end of the range. It is shortest at the lower end only where it does not fall first: with two strands
 * or more to climb and a short line it does, down to where `(s/2) / hypot(s/2, t) = 1 - 1/c`.
 */
export function spanBounds(segment: Stretch, range: GaugeRange, thicknessMm = 0): Bounds {
  const corner = (end: keyof Bounds) => ({
    widthMm: range.stitchWidthMm[end],
    heightMm: range.rowHeightMm[end],
  });
  const ends = [corner("least"), corner("most")].map((stitch) => spanMm(segment, stitch, thicknessMm));
  return { least: Math.min(...ends, lowestBetween(segment, range, thicknessMm)), most: Math.max(...ends) };
}

/** The path where it neither falls nor rises with the straight line; infinite where that is not within the range. */
function lowestBetween({ needles, rows, climbs }: Stretch, range: GaugeRange, thicknessMm: number): number {
  if (climbs < 2 || thicknessMm === 0) return Number.POSITIVE_INFINITY;
  const straight = (end: keyof Bounds): number =>
    Math.hypot(needles * range.stitchWidthMm[end], rows * range.rowHeightMm[end]);
  const cosine = 1 - 1 / climbs;
  const half = (cosine * thicknessMm) / Math.sqrt(1 - cosine * cosine);
  if (2 * half <= straight("least") || 2 * half >= straight("most")) return Number.POSITIVE_INFINITY;
  return 2 * half + 2 * climbs * (Math.hypot(half, thicknessMm) - half);
}

/**
 * Least and greatest ease of a segment over a range of gauges: it rises with the cord stitch and falls with the path,
 * and the two do not depend on each other.
 *
 * @param range of a gauge with a cord
 */
export function easeBounds(
  segment: Stretch & { readonly pickup: number },
  range: GaugeRange,
  thicknessMm = 0,
): Bounds {
  const span = spanBounds(segment, range, thicknessMm);
  const cord = range.cordStitchMm!;
  return {
    least: easeOf(segment.pickup, cord.least, span.most),
    most: easeOf(segment.pickup, cord.most, span.least),
  };
}
