import { beforeAll, describe, expect, test } from "vitest";
import { toProgram } from "../../solver/choice.ts";
import { highsEngine } from "../../solver/highs-engine.ts";
import { programToLpText } from "../../solver/lp-text.ts";
import { prepareCord } from "../../src/cord/preparation.ts";
import { enumerate } from "../../src/fit/enumerate.ts";
import type { Fit } from "../../src/fit/fit.ts";
import { formulate } from "../../src/fit/formulate.ts";
import type { FitResult } from "../../src/fit/solve.ts";
import type { Garment } from "../../src/garment/garment.ts";
import { solveTextWithGlpk } from "../solver/support/glpk-engine.ts";
import { knit } from "../support/bed-simulator.ts";
import { exhaustiveBest } from "../support/exhaustive.ts";
import type { GarmentFile } from "../support/garment-file.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { fitHere, garmentOf } from "../support/run-garment.ts";
import { sheetPiecesOf } from "../support/sheet-of.ts";

/** Costs are sums of a few products; two ways of adding them differ by far less than this. */
const costTolerance = 1e-6;

const count = 500;

interface Judged {
  readonly plain: GarmentFile;
  readonly garment: Garment;
  readonly result: FitResult;
}

const judged: Judged[] = [];

beforeAll(async () => {
  for (const plain of sampleGarments(count, 20261125, { sharedPieces: false })) {
    const garment = garmentOf(plain);
    judged.push({ plain, garment, result: await fitHere(garment, { rivals: 2 }) });
  }
});

const fits = (): { plain: GarmentFile; garment: Garment; fit: Fit; rivals: readonly Fit[] }[] =>
  judged.flatMap(({ plain, garment, result }) =>
    result.status === "fits" ? [{ plain, garment, fit: result.fit, rivals: result.rivals }] : [],
  );

describe(`${count} random garments`, () => {
  test("cost what an exhaustive search finds, and fit where it finds a fit", () => {
    for (const { plain, garment, result } of judged) {
      const referee = exhaustiveBest(plain, { edges: edgesOf(garment) });
      const told = result.status === "fits" ? result.fit.cost : undefined;
      const about = JSON.stringify(plain);
      if (referee === undefined || told === undefined) expect(told, about).toBe(referee?.cost);
      else expect(Math.abs(told - referee.cost), about).toBeLessThan(costTolerance);
    }
    // Most of them have a fit, or the comparison would say little.
    expect(fits().length).toBeGreaterThan(count / 2);
    expect(fits().length).toBeLessThan(count);
  });

  test("are solved at the root: a tree of choices needs no branching", () => {
    for (const { result } of judged) {
      if (result.status !== "fits") continue;
      expect(result.proven).toBe(true);
      expect(result.bestNodes).toBeLessThanOrEqual(1);
    }
  });

  test("reach the same optimum in HiGHS and GLPK from the text that model writes", async () => {
    let compared = 0;
    for (const { garment, fit } of fits().slice(0, 120)) {
      const { program } = toProgram(formulate(enumerate(garment)));
      const highs = await highsEngine(program, {});
      const glpk = await solveTextWithGlpk(programToLpText(program));
      expect(highs.status).toBe("optimal");
      expect(glpk.status).toBe("optimal");
      if (highs.status !== "optimal" || glpk.status !== "optimal") continue;
      expect(Math.abs(highs.cost - fit.cost)).toBeLessThan(costTolerance);
      expect(Math.abs(glpk.cost - fit.cost)).toBeLessThan(costTolerance);
      compared++;
    }
    expect(compared).toBeGreaterThanOrEqual(100);
  });

  test("are knitted from their sheets alone, and come out as the fit says", () => {
    for (const { plain, garment, fit, rivals } of fits())
      for (const one of [fit, ...rivals]) knitAll(garment, one, JSON.stringify(plain));
  });
});

function knitAll(garment: Garment, fit: Fit, about: string): void {
  const sheetPieces = sheetPiecesOf(fit);
  for (const sheetPiece of sheetPieces) {
    const piece = fit.pieces.find(({ name }) => name === sheetPiece.piece)!;
    const report = knit(sheetPiece, { bedNeedles: garment.bed.needles, carriage: piece.carriage });
    expect(report.violations, about).toEqual([]);
    expect(report.rows, about).toBe(piece.rows);
    expect(report.needlesAtEnd, about).toEqual([]);
    const placed = fit.placements.filter((placement) => placement.piece === piece.name);
    const used = placed.reduce((sum, placement) => sum + (prepareCord(fit, placement)?.used ?? 0), 0);
    expect(report.cordStitches, about).toBe(used);
    for (const { row, from, to } of report.spans) {
      if (piece.neck && row >= piece.neck.row) continue;
      expect([-piece.left[row]!, piece.right[row]!], about).toEqual([leftOf(from), rightOf(to)]);
    }
  }
}

/** Boundaries at the outer sides of the outermost needles. */
const leftOf = (needle: number): number => (needle < 0 ? needle : needle - 1);
const rightOf = (needle: number): number => (needle > 0 ? needle : needle + 1);
