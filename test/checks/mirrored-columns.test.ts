import { beforeAll, describe, expect, test } from "vitest";
import { checkFit, describeBreaches } from "../../src/fit/check.ts";
import type { Fit } from "../../src/fit/fit.ts";
import type { FitResult } from "../../src/fit/solve.ts";
import { type Crossing, type Hanging, type KnitReport, knit } from "../support/bed-simulator.ts";
import { exhaustiveBest } from "../support/exhaustive.ts";
import type { GarmentFile } from "../support/garment-file.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { fitHere, garmentOf } from "../support/run-garment.ts";
import { sheetPiecesOf } from "../support/sheet-of.ts";

const costTolerance = 1e-6;
const count = 90;

interface Judged {
  readonly plain: GarmentFile;
  readonly result: FitResult;
}

const judged: Judged[] = [];

beforeAll(async () => {
  const garments = sampleGarments(count, 20261129, {
    sharedPieces: false,
    mirrored: true,
    placements: [1, 2],
  });
  for (const plain of garments) {
    if (!plain.place.some(({ mirror }) => mirror)) continue;
    judged.push({ plain, result: await fitHere(garmentOf(plain), { rivals: 1 }) });
  }
});

const fits = (): { plain: GarmentFile; fit: Fit }[] =>
  judged.flatMap(({ plain, result }) => (result.status === "fits" ? [{ plain, fit: result.fit }] : []));

describe(`random garments among ${count} whose columns are mirrored`, () => {
  test("cost what an exhaustive search finds, and fit where it finds a fit", () => {
    for (const { plain, result } of judged) {
      const referee = exhaustiveBest(plain, { edges: edgesOf(garmentOf(plain)) });
      const told = result.status === "fits" ? result.fit.cost : undefined;
      const about = JSON.stringify(plain);
      if (referee === undefined || told === undefined) expect(told, about).toBe(referee?.cost);
      else expect(Math.abs(told - referee.cost), about).toBeLessThan(costTolerance);
    }
    expect(judged.length).toBeGreaterThan(count / 5);
    expect(fits().length).toBeGreaterThan(judged.length / 3);
  });

  test("are knitted from their sheets with each mirrored column the image of the first, by the same counts", () => {
    let mirrored = 0;
    for (const { plain, fit } of fits()) {
      const sheetPieces = sheetPiecesOf(fit);
      for (const sheetPiece of sheetPieces) {
        const about = JSON.stringify(plain);
        const { carriage } = fit.pieces.find(({ name }) => name === sheetPiece.piece)!;
        const report = knit(sheetPiece, { bedNeedles: fit.garment.bed.needles, carriage });
        expect(report.violations, about).toEqual([]);
        const placed = fit.placements.find(({ piece }) => piece === sheetPiece.piece)!;
        const { mirror } = plain.place[placed.index]!;
        expect(placed.panel.mirrored, about).toBe(mirror ? Math.floor(placed.columns / 2) : 0);
        for (let column = 2; column <= placed.columns; column++) {
          const turned = mirror === true && 2 * column > placed.columns + 1;
          if (turned) mirrored++;
          expect(shapeOf(report, column, turned), about).toEqual(shapeOf(report, 1, false));
        }
      }
    }
    expect(mirrored).toBeGreaterThan(10);
  });

  test("are refused by the independent check where another number of columns is told to be mirrored", () => {
    const { fit } = fits().find(({ fit: one }) => one.placements[0]!.panel.mirrored > 0)!;
    expect(checkFit(fit.garment, fit, fit.cost)).toEqual([]);
    const [first, ...others] = fit.placements;
    const panel = { ...first!.panel, mirrored: 0 };
    const wrong = { ...fit, placements: [{ ...first!, panel }, ...others] };
    expect(describeBreaches(checkFit(fit.garment, wrong, fit.cost))).toContain(
      "0 columns are told to be mirrored",
    );
  });
});

/** What is done in a column, in needles from the first thing that is done in it; seen in a mirror where it is turned. */
function shapeOf(
  report: Pick<KnitReport, "hangings" | "crossings">,
  column: number,
  turned: boolean,
): unknown {
  const sign = turned ? -1 : 1;
  const hangings = report.hangings.filter((one) => one.column === column);
  const crossings = report.crossings.filter((one) => one.column === column);
  const places = [...hangings.map(placeOfHanging), ...crossings.map(placeOfCrossing)];
  const from = (place: number): number => sign * (place - places[0]!) + 0;
  return {
    hangings: hangings.map((one) => [one.strand, one.row, one.count, from(placeOfHanging(one))]),
    crossings: crossings.map((one) => [one.row, from(placeOfCrossing(one)), ...groupsOf(one, turned)]),
  };
}

const groupsOf = ({ left, right, over }: Crossing, turned: boolean): readonly unknown[] =>
  turned ? [right, left, over === "left" ? "right" : "left"] : [left, right, over];

const position = (needle: number): number => (needle > 0 ? needle - 0.5 : needle + 0.5);

const placeOfHanging = ({ needle }: Hanging): number => position(needle);

/** The boundary between the two groups. */
const placeOfCrossing = ({ from, left }: Crossing): number => position(from) - 0.5 + left;
