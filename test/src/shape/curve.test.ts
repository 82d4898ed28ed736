import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CURVES, type CurveName, linesOf } from "../../../src/shape/curve.ts";

const names = Object.keys(CURVES) as CurveName[];
const stitch = { widthMm: 4, heightMm: 3 };

/** Distance of a point from a stretch between two others. */
function fromStretch([px, py]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const along = ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy || 1);
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(px - ax - t * dx, py - ay - t * dy);
}
type Point = readonly [x: number, y: number];

describe.each(names)("a %s", (name) => {
  const course = CURVES[name];

  test("goes from one end to the other, and never back", () => {
    expect(course(0)).toEqual({ across: 0, up: 0 });
    expect(course(1).across).toBeCloseTo(1, 12);
    expect(course(1).up).toBeCloseTo(1, 12);
    for (let step = 1; step <= 200; step++) {
      const [before, now] = [course((step - 1) / 200), course(step / 200)];
      expect(now.across).toBeGreaterThanOrEqual(before.across);
      expect(now.up).toBeGreaterThanOrEqual(before.up);
    }
  });

  test("is drawn by lines that lie less than a quarter of a stitch from it", () => {
    fc.assert(
      fc.property(fc.integer({ min: -800, max: 800 }), fc.integer({ min: 1, max: 800 }), (across, up) => {
        const lines = linesOf(name, across, up, stitch);
        const at = (t: number): Point => {
          const point = course(t);
          return [(point.across * across) / stitch.widthMm, (point.up * up) / stitch.heightMm];
        };
        for (let line = 0; line < lines; line++)
          for (const part of [0.1, 0.3, 0.5, 0.7, 0.9])
            expect(
              fromStretch(at((line + part) / lines), at(line / lines), at((line + 1) / lines)),
            ).toBeLessThan(0.25);
      }),
      { numRuns: 200, seed: 5 },
    );
  });
});

test("a scoop and a crown are quarters of an ellipse, a dome the way round a half ball", () => {
  for (const t of [0.2, 0.5, 0.8]) {
    const scoop = CURVES.scoop(t);
    expect(scoop.across ** 2 + (1 - scoop.up) ** 2).toBeCloseTo(1, 12);
    const dome = CURVES.dome(t);
    // So far up the surface of a ball, the way round it has shrunk to the cosine of its angle.
    expect(1 - dome.across).toBeCloseTo(Math.cos((dome.up * Math.PI) / 2), 12);
  }
  expect(CURVES.bell(0.5)).toMatchObject({ across: 0.5, up: 0.5 });
});
