import { polygonArea } from "d3-polygon";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { groundStitch } from "../../../../src/cloth/gauge.ts";
import { type DrawnShape, isProblem, type Point } from "../../../../src/drawing-file/drawing.ts";
import { distanceToChord } from "../../../../src/drawing-file/flatten.ts";
import {
  type DrawnOutline,
  drawnOutline,
  type ReadingOfLine,
} from "../../../../src/drawing-file/outline/drawn-outline.ts";
import { readSvg } from "../../../../src/drawing-file/svg/read-svg.ts";

const stitch = groundStitch({ ground: { stitches: 22, rows: 31, overMm: 100 } });

/** A line drawn in mm on a page of 500 by 700. */
function line(d: string): DrawnShape {
  const drawing = readSvg(
    `<svg width="500mm" height="700mm" viewBox="0 0 500 700"><path id="p" d="${d}"/></svg>`,
  );
  if (isProblem(drawing)) throw new Error(drawing.problem);
  return drawing.shapes[0]!;
}

const read = (d: string, how: Partial<ReadingOfLine> = {}) =>
  drawnOutline(line(d), { stitch, turn: 0, ...how });

function sound(d: string, how: Partial<ReadingOfLine> = {}): DrawnOutline {
  const outline = read(d, how);
  if ("problem" in outline) throw new Error(outline.problem);
  return outline;
}

describe("a drawn line as a piece", () => {
  test("a tapered sleeve has the two heights that it is drawn with", () => {
    expect(sound("M 150 600 L 95 270 V 240 H 405 V 270 L 350 600 Z").outline).toEqual([
      { heightMm: 0, widthMm: 200 },
      { heightMm: 330, widthMm: 310 },
      { heightMm: 360, widthMm: 310 },
    ]);
  });

  test("a step stays a step, and an opening at the top is the neck", () => {
    const { outline, neck } = sound(
      "M 50 600 V 250 H 70 V 50 H 180 L 220 120 H 280 L 320 50 H 430 V 250 H 450 V 600 Z",
    );
    expect(outline).toEqual([
      { heightMm: 0, widthMm: 400 },
      { heightMm: 350, widthMm: 400 },
      { heightMm: 350, widthMm: 360 },
      { heightMm: 550, widthMm: 360 },
    ]);
    expect(neck).toEqual([
      { heightMm: 480, widthMm: 60 },
      { heightMm: 550, widthMm: 140 },
    ]);
  });

  test("sides that differ are told apart, about the middle of the cast-on edge or a given centre", () => {
    const d = "M 100 600 L 80 300 H 300 V 600 Z";
    expect(sound(d).outline).toEqual([
      { heightMm: 0, leftMm: 100, rightMm: 100 },
      { heightMm: 300, leftMm: 120, rightMm: 100 },
    ]);
    expect(sound(d, { centreMm: 50 }).outline[1]).toEqual({ heightMm: 300, leftMm: 70, rightMm: 150 });
  });

  test("an edge may go beyond the centre line", () => {
    const { outline } = sound("M 100 600 L 150 300 L 350 250 L 400 100 L 450 100 L 400 600 Z");
    expect(outline.at(-1)).toEqual({ heightMm: 500, leftMm: -150, rightMm: 200 });
  });

  test("a drawing on its side is turned, clockwise", () => {
    const upright = sound("M 100 600 L 80 300 H 300 V 600 Z").outline;
    // The same piece with its cast-on edge at the right of the page: turned clockwise it comes down.
    expect(sound("M 400 100 V 300 L 100 320 V 100 Z", { turn: 90 }).outline).toEqual(upright);
    expect(sound("M 300 100 L 320 400 H 100 V 100 Z", { turn: 180 }).outline).toEqual(upright);
  });

  test("a shoulder that runs out to a point is bound off where two stitches are left, and so it says", () => {
    const { outline, neck, remarks } = sound("M 50 600 V 150 L 200 50 Q 250 250 300 50 L 450 150 V 600 Z");
    const top = outline.at(-1)!;
    expect(top.heightMm).toBeLessThan(550);
    expect("widthMm" in top && (top.widthMm - neck.at(-1)!.widthMm) / 2).toBeCloseTo(2 * stitch.widthMm, 0);
    expect(remarks).toEqual([expect.stringContaining("bound off at 54.")]);
  });

  test("a hem that curves up is cast on bit by bit, and so it says", () => {
    expect(sound("M 50 590 Q 250 610 450 590 V 300 H 50 Z").remarks).toEqual([
      "its lowest edge is level over 10 cm only: more stitches are cast on at the sides, to 40 cm at 1 cm above it",
    ]);
    expect(sound("M 100 600 L 50 300 H 350 L 300 600 Z").remarks).toEqual([]);
  });

  test("notches are marks, one for a height", () => {
    const shape = {
      ...line("M 50 600 V 50 H 450 V 600 Z"),
      notches: [
        [50, -400],
        [450, -401],
        [50, -200],
      ] as Point[],
    };
    const outline = drawnOutline(shape, { stitch, turn: 0 });
    expect("marks" in outline && outline.marks).toEqual([
      { name: "notch 1", heightMm: 199 },
      { name: "notch 2", heightMm: 400 },
    ]);
  });

  test("an open line is closed straight, and so it says", () => {
    expect(sound("M 100 600 L 100 300 H 300 V 600").remarks).toEqual([
      "its line is not closed: its two ends, 20 cm apart, are joined straight",
    ]);
  });
});

describe("what cannot be knitted as one piece is refused with where", () => {
  test.each([
    ["M 30 620 V 40 H 470 V 650 Z", "rises 3 cm over 44 cm to the left"],
    ["M 30 600 V 40 H 470 V 600 L 250 650 Z", "rises 5 cm over 22 cm"],
    [
      "M 30 620 V 40 H 100 L 150 100 L 200 40 H 300 L 350 100 L 400 40 H 470 V 620 Z",
      "from 52 cm above the foot on it is in 3 parts",
    ],
    ["M 130 620 V 140 L 30 300 V 40 H 470 V 620 Z", "32 cm above the foot another part begins"],
    [
      "M 100 600 V 300 L 50 310 V 100 H 450 V 310 L 400 300 V 600 Z",
      "29 cm above the foot another part begins",
    ],
    [
      "M 30 620 V 40 H 470 V 620 Z M 200 200 h 50 v 50 h -50 z",
      "the second begins 37 cm above the foot of the largest",
    ],
    ["M 30 620 V 40 H 470 V 620 H 300 V 500 H 200 V 620 Z", "in 2 parts, 10 cm apart"],
    ["M 30 620 L 480 40 L 30 45 L 470 620 Z", "crosses itself"],
    [
      "M 100 600 V 300 L 200 200 L 250 300 L 400 100 V 600 Z",
      "the left half beside the neck ends 40 cm above the foot",
    ],
    ["M 50 600 V 50 H 100 L 150 200 L 200 50 H 450 V 600 Z", "not centred"],
    ["M 50 600 V 300 H 200 V 295 H 450 V 50 H 50", undefined],
    ["M 50 50 L 60 50", "encloses nothing"],
  ])("%s", (d, words) => {
    const outline = read(d);
    if (words !== undefined) expect(outline).toMatchObject({ problem: expect.stringContaining(words) });
    else expect("problem" in outline || outline.outline.length > 1).toBe(true);
  });

  test("endless zigzags are refused before they cost time", () => {
    const teeth = Array.from(
      { length: 4000 },
      (_, index) => `L ${100 + (index % 2) * 200} ${600 - index / 8}`,
    );
    expect(read(`M 100 600 ${teeth.join(" ")} L 50 100 V 600 Z`)).toMatchObject({
      problem: expect.stringMatching(/more than 2000 corners|parts side by side|crosses itself/),
    });
  });
});

/** Corners of the piece that an outline describes, right side up, neck included. */
function corners({ outline, neck }: DrawnOutline): [number, number][] {
  const half = (side: "leftMm" | "rightMm") =>
    outline.map((at): [number, number] => ["widthMm" in at ? at.widthMm / 2 : at[side], at.heightMm]);
  const opening = neck.map(({ widthMm, heightMm }): [number, number] => [widthMm / 2, heightMm]);
  return [
    ...half("rightMm"),
    ...[...opening].reverse(),
    ...opening.map(([x, y]): [number, number] => [-x, y]),
    ...half("leftMm")
      .reverse()
      .map(([x, y]): [number, number] => [-x, y]),
  ];
}

test("of random fronts with curves the area is that of the polygon (d3-polygon), and no point is a quarter stitch off", () => {
  const quarter = Math.min(stitch.widthMm, stitch.heightMm) / 4;
  const whole = (min: number, max: number) => fc.integer({ min, max });
  fc.assert(
    fc.property(
      whole(160, 220),
      whole(0, 40),
      whole(20, 60),
      whole(40, 80),
      whole(60, 140),
      (half, flare, hole, neckHalf, depth) => {
        const shoulder = half - hole;
        const side = (sign: 1 | -1) => (x: number) => 250 + sign * x;
        const [r, l] = [side(1), side(-1)];
        const d = `M ${r(half)} 650 L ${r(half + flare)} 300 C ${r(shoulder)} 300 ${r(shoulder)} 260 ${r(shoulder)} 200 V 50 H ${r(neckHalf)}
        C ${r(neckHalf)} ${50 + depth} ${l(neckHalf)} ${50 + depth} ${l(neckHalf)} 50 H ${l(shoulder)} V 200
        C ${l(shoulder)} 260 ${l(shoulder)} 300 ${l(half + flare)} 300 L ${l(half)} 650 Z`;
        const outline = sound(d);
        const polygon = corners(outline);
        const drawn = line(d).contours[0]!.points.map(([x, y]): [number, number] => [x - 250, y + 650]);
        const ring = [...polygon, polygon[0]!];
        const length = ring
          .slice(1)
          .reduce((sum, [x, y], at) => sum + Math.hypot(x - ring[at]![0], y - ring[at]![1]), 0);
        expect(Math.abs(Math.abs(polygonArea(polygon)) - Math.abs(polygonArea(drawn)))).toBeLessThan(
          length * quarter * 0.5,
        );
        for (const point of drawn) {
          const off = Math.min(...ring.slice(1).map((end, at) => distanceToChord(point, ring[at]!, end)));
          expect(off).toBeLessThan(quarter);
        }
      },
    ),
    { seed: 31, numRuns: 100 },
  );
});
