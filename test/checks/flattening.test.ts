import fc from "fast-check";
import { svgPathProperties } from "svg-path-properties";
import { describe, expect, test } from "vitest";
import { FLATTENING_TOLERANCE_MM, type Point } from "../../src/drawing-file/drawing.ts";
import { distanceToChord, flattenBulge } from "../../src/drawing-file/flatten.ts";
import { flatPath } from "../../src/drawing-file/svg/path.ts";

const number = fc.integer({ min: -300, max: 300 });
const pair = fc.tuple(number, number);
/** Small enough that an arc reaches its end with the radii it is given. */
const step = fc.integer({ min: -100, max: 100 });

const segment = fc.oneof(
  fc.tuple(pair, pair, pair).map(([a, b, c]) => `C ${a} ${b} ${c}`),
  fc.tuple(pair, pair).map(([a, b]) => `S ${a} ${b}`),
  fc.tuple(pair, pair).map(([a, b]) => `q ${a} ${b}`),
  // The reference takes up a control point for T after commands of other kinds too, against the standard.
  fc.tuple(pair, pair, pair).map(([a, b, c]) => `Q ${a} ${b} T ${c}`),
  pair.map((a) => `L ${a}`),
  fc
    .tuple(
      fc.integer({ min: 80, max: 300 }),
      fc.integer({ min: 80, max: 300 }),
      fc.integer({ min: 0, max: 90 }),
      fc.boolean(),
      fc.boolean(),
      fc.tuple(step, step),
    )
    .map(
      ([rx, ry, turn, large, sweep, to]) => `a ${rx} ${ry} ${turn} ${Number(large)} ${Number(sweep)} ${to}`,
    ),
);

const pathData = fc
  .tuple(pair, fc.array(segment, { minLength: 1, maxLength: 4 }))
  .map(([start, segments]) => `M ${start} ${segments.join(" ")}`);

const lengthOf = (points: readonly Point[]): number =>
  points
    .slice(1)
    .reduce((sum, [x, y], index) => sum + Math.hypot(x - points[index]![0], y - points[index]![1]), 0);

const nearestTo = (point: Point, points: readonly Point[]): number =>
  Math.min(...points.slice(1).map((end, index) => distanceToChord(point, points[index]!, end)));

describe("curves broken into straight pieces, against a reference library (svg-path-properties 1.3.0)", () => {
  test("stay within the tolerance of its points, and are as long but for what chords lose", () => {
    let compared = 0;
    fc.assert(
      fc.property(pathData, (data) => {
        const reference = new svgPathProperties(data);
        const whole = reference.getTotalLength();
        fc.pre(Number.isFinite(whole) && whole > 10);
        const points = flatPath(data, [], { xMm: 1, yMm: -1 }).contours[0]!.points;
        // Arcs become curves first, which lie within 0.03 % of their radius.
        const allowed = FLATTENING_TOLERANCE_MM + (data.includes("a") ? 0.0003 * 300 : 0.001);
        // Not at the very ends of a part: there the reference may run a little beyond its curve.
        for (const part of reference.getParts())
          for (let at = 1; at < 12; at++) {
            const { x, y } = part.getPointAtLength((part.length * at) / 12);
            // It has no place on a curve whose points are all one.
            if (Number.isFinite(x + y))
              expect(nearestTo([x, y], points), `${data} at ${at}`).toBeLessThanOrEqual(allowed);
          }
        expect(Math.abs(lengthOf(points) - whole) / whole, data).toBeLessThan(0.01);
        compared++;
      }),
      { seed: 52, numRuns: 300 },
    );
    expect(compared).toBeGreaterThan(250);
  });

  test("an arc by its bulge is the arc by its radius", () => {
    fc.assert(
      fc.property(
        pair,
        pair,
        fc.double({ min: 0.05, max: 3, noNaN: true }),
        fc.boolean(),
        (from, to, size, clockwise) => {
          const chord = Math.hypot(to[0] - from[0], to[1] - from[1]);
          fc.pre(chord > 5);
          const bulge = clockwise ? -size : size;
          const radius = (chord * (1 + size * size)) / (4 * size);
          fc.pre(radius < 2000);
          // Counter-clockwise with y upward is sweep 0 with y downward.
          const flags = `${Number(size > 1)} ${Number(!clockwise)}`;
          const reference = new svgPathProperties(`M ${from} A ${radius} ${radius} 0 ${flags} ${to}`);
          const points: Point[] = [from, ...flattenBulge(from, to, bulge)];
          for (let at = 0; at <= 20; at++) {
            const { x, y } = reference.getPointAtLength((reference.getTotalLength() * at) / 20);
            expect(nearestTo([x, y], points)).toBeLessThanOrEqual(FLATTENING_TOLERANCE_MM + radius * 1e-4);
          }
        },
      ),
      { seed: 42, numRuns: 200 },
    );
  });
});
