import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { countPiece } from "../../src/cloth/counted-piece.ts";
import { groundStitch } from "../../src/cloth/gauge.ts";
import { readGarment } from "../../src/garment/read-garment.ts";
import { BUILT_IN_SHAPES } from "../../src/shape/builtin/index.ts";
import type { ShapeDescription } from "../../src/shape/description.ts";
import { measurementsOf } from "../../src/shape/make-shape.ts";
import { knit } from "../support/bed-simulator.ts";
import { areaApart, areaTolerance } from "../support/drawn-area.ts";
import { fitHere, garmentOf } from "../support/run-garment.ts";
import { sheetPiecesOf } from "../support/sheet-of.ts";

type Written = Readonly<Record<string, string>>;

const GAUGES = [
  { stitches: 22, rows: 31 },
  { stitches: 28, rows: 40 },
] as const;
type Gauge = (typeof GAUGES)[number];

const BED_NEEDLES = 400;

const fileOf = (shape: Written, gauge: Gauge): object => ({
  format: "evenrow/1",
  bed: { needles: BED_NEEDLES },
  gauge: {
    ground: { ...gauge, over: "10 cm" },
    cord: { needles: 3, stitches: 19, over: "10 cm" },
  },
  pieces: { piece: { shape } },
  motifs: { plait: { like: "crossed cord", interval: { allow: [3, 4] }, spread: { allow: 3 } } },
  place: [{ motif: "plait", on: "piece", margins: { bottom: "0..8", top: "0..8" } }],
});

/** What a shape that no size knows is made from, a small and a large one. */
const OWN: Readonly<Record<string, readonly Written[]>> = {
  scarf: [{}, { width: "18 cm", length: "40 cm" }],
  blanket: [{}, { panel: "35 cm" }],
  hat: [{ head: "40 cm" }, { head: "60 cm" }],
  "sock leg": [
    { calf: "24 cm", ankle: "18 cm", length: "14 cm" },
    { calf: "38 cm", ankle: "25 cm", length: "30 cm" },
  ],
  "bag panel": [
    { width: "20 cm", height: "22 cm" },
    { width: "45 cm", height: "40 cm" },
  ],
};

/** A baby's, a child's, a woman's and a man's, the least and the greatest that are wholly printed. */
const SIZES = ["baby 3 months", "child 6", "woman XS", "woman XL", "man S", "man XL"].map((size) => ({
  size,
  ease: "standard",
}));

/** Every way to choose among the words of a shape. */
function choicesOf({ choices = {} }: ShapeDescription): readonly Written[] {
  return Object.entries(choices).reduce<readonly Written[]>(
    (made, [key, { words }]) => made.flatMap((one) => words.map((word) => ({ ...one, [key]: word }))),
    [{}],
  );
}

const CASES = [...BUILT_IN_SHAPES].flatMap(([like, description]) =>
  choicesOf(description).flatMap((choice) =>
    (OWN[like] ?? SIZES).map((measures): Written => ({ like, ...choice, ...measures })),
  ),
);

describe.each(CASES.map((shape) => [Object.values(shape).join(", "), shape] as const))("%s", (_, shape) => {
  test.each(GAUGES)("is knitted as it is drawn, with a motif, at %o", async (gauge) => {
    const garment = garmentOf(fileOf(shape, gauge));
    const [piece] = garment.pieces;
    const stitch = groundStitch(garment.gauge);
    const counted = countPiece(piece!, stitch);
    expect(areaApart(piece!, counted, stitch)).toBeLessThanOrEqual(areaTolerance(counted));

    const result = await fitHere(garment, { rivals: 0 });
    if (result.status !== "fits") throw new Error(`nothing fits: ${result.status}`);
    const [sheet] = sheetPiecesOf(result.fit);
    const report = knit(sheet!, { bedNeedles: BED_NEEDLES, carriage: "right" });
    expect(report.violations).toEqual([]);
    expect(report.needlesAtEnd).toEqual([]);
    expect(report.rows).toBe(counted.rows);
  });
});

describe("the pieces of one sweater", () => {
  /** The length of a piece's right edge above its underarm, by its stations. */
  function edgeAboveMm(shape: Written): number {
    const [piece] = garmentOf(fileOf(shape, GAUGES[0])).pieces;
    const underarmMm = piece!.marks.find(({ name }) => name === "underarm")!.heightMm;
    const above = piece!.outline.flatMap((station) =>
      station.heightMm >= underarmMm && "widthMm" in station ? [station] : [],
    );
    return above
      .slice(1)
      .reduce(
        (sum, { heightMm, widthMm }, index) =>
          sum + Math.hypot(heightMm - above[index]!.heightMm, (widthMm - above[index]!.widthMm) / 2),
        0,
      );
  }
  const capTopMm = (shape: Written): number => {
    const top = garmentOf(fileOf(shape, GAUGES[0])).pieces[0]!.outline.at(-1)!;
    return "widthMm" in top ? top.widthMm : Number.NaN;
  };

  // A quarter of an ellipse is measured to 1 % by its formula, and its lines are a little shorter than it.
  test.each(SIZES)("have a cap whose edge goes into the armhole's, for $size", (measures) => {
    const armhole = edgeAboveMm({ like: "body front", armhole: "set-in", ...measures });
    const sleeve = { like: "set-in sleeve", ...measures };
    const cap = edgeAboveMm(sleeve) + capTopMm(sleeve) / 2;
    expect(Math.abs(cap / armhole - 1)).toBeLessThan(0.02);
  });

  test.each(SIZES)("have raglan edges of as many rows on body and sleeve, for $size", (measures) => {
    const rowsAbove = (like: string): number => {
      const garment = garmentOf(fileOf({ like, ...measures }, GAUGES[0]));
      const [piece] = garment.pieces;
      const underarmMm = piece!.marks.find(({ name }) => name === "underarm")!.heightMm;
      return piece!.outline.at(-1)!.heightMm - underarmMm;
    };
    const [front, back, sleeve] = ["raglan front", "raglan back", "raglan sleeve"].map(rowsAbove);
    expect(front).toBeCloseTo(back!, 5);
    expect(front).toBeCloseTo(sleeve!, 5);
  });
});

describe("measurements at random", () => {
  const likes = [...BUILT_IN_SHAPES.keys()];
  const shapes: fc.Arbitrary<Written> = fc.constantFrom(...likes).chain((like) => {
    const description = BUILT_IN_SHAPES.get(like)!;
    return fc.constantFrom(...choicesOf(description)).chain((choice) => {
      const names = Object.keys(measurementsOf(description, new Map(Object.entries(choice))));
      const lengths = fc.record(
        Object.fromEntries(
          names.map((name) => [name, fc.integer({ min: -50, max: 1500 }).map((mm) => `${mm} mm`)]),
        ),
        { requiredKeys: [] },
      );
      const sizes = fc.constantFrom<Written>({}, ...SIZES, { size: "woman 3X" }, { size: "child 2" });
      return fc.tuple(sizes, lengths).map(([size, length]): Written => {
        // An ease by a fit's name is only for a shape that has one.
        const { ease, ...plain } = size;
        const fit = ease !== undefined && description.measurements.ease?.orFit ? { ease } : {};
        return { like, ...choice, ...plain, ...fit, ...length };
      });
    });
  });

  test("give a piece that can be counted, or are refused with what would be right", () => {
    const told = { made: 0, refused: 0 };
    fc.assert(
      fc.property(shapes, fc.constantFrom(...GAUGES), (shape, gauge) => {
        const { garment, diagnostics } = readGarment(JSON.stringify(fileOf(shape, gauge)), "piece.json");
        const errors = diagnostics.filter(({ severity }) => severity === "error");
        if (garment) {
          const [piece] = garment.pieces;
          const stitch = groundStitch(garment.gauge);
          const counted = countPiece(piece!, stitch);
          expect(areaApart(piece!, counted, stitch)).toBeLessThanOrEqual(areaTolerance(counted));
          told.made++;
        } else {
          expect(errors.length).toBeGreaterThan(0);
          for (const { message, expected, place } of errors) {
            expect(message).not.toMatch(/undefined|NaN|Infinity|_/);
            expect(expected).toBeTruthy();
            expect(place).toBeDefined();
          }
          told.refused++;
        }
      }),
      { numRuns: 2000, seed: 20261125 },
    );
    expect(told.made).toBeGreaterThan(100);
    expect(told.refused).toBeGreaterThan(100);
  });
});
