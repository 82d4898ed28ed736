import { beforeAll, describe, expect, test } from "vitest";
import { countPiece } from "../../src/cloth/counted-piece.ts";
import { groundStitch } from "../../src/cloth/gauge.ts";
import { sceneOf } from "../../src/draw/scene.ts";
import { chartSvg } from "../../src/draw/svg.ts";
import type { FitResult } from "../../src/fit/solve.ts";
import type { Garment } from "../../src/garment/garment.ts";
import { knit } from "../support/bed-simulator.ts";
import { exhaustiveBest } from "../support/exhaustive.ts";
import type { GarmentFile } from "../support/garment-file.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { fitHere, garmentOf } from "../support/run-garment.ts";
import { sheetPiecesOf } from "../support/sheet-of.ts";

/** Costs are sums of a few products; two ways of adding them differ by far less than this. */
const costTolerance = 1e-6;

const count = 300;

interface Judged {
  readonly plain: GarmentFile;
  readonly garment: Garment;
  readonly result: FitResult;
}

const judged: Judged[] = [];

beforeAll(async () => {
  const wishes = { sharedPieces: false, leaning: true, evenRows: true, placements: [1, 2] } as const;
  for (const plain of sampleGarments(count, 33, wishes)) {
    const garment = garmentOf(plain);
    judged.push({ plain, garment, result: await fitHere(garment, { rivals: 1 }) });
  }
});

describe(`${count} random garments that lean to a side, have necks and steps, and are shaped on even rows`, () => {
  test("are what they are meant to be", () => {
    const pieces = judged.flatMap(({ plain }) => Object.values(plain.pieces));
    const beyond = ({ outline }: (typeof pieces)[number]): boolean =>
      outline.some((at) => "left" in at && (at.left.startsWith("-") || at.right.startsWith("-")));
    expect(pieces.filter(beyond).length).toBeGreaterThan(count / 4);
    expect(pieces.filter(({ shaping }) => shaping === "even rows").length).toBeGreaterThan(count / 4);
    expect(pieces.filter(({ neck }) => neck !== undefined).length).toBeGreaterThan(count / 10);
    expect(judged.filter(({ result }) => result.status === "fits").length).toBeGreaterThan(count / 2);
  });

  test("cost what an exhaustive search finds, and fit where it finds a fit", () => {
    for (const { plain, garment, result } of judged) {
      const best = exhaustiveBest(plain, { edges: edgesOf(garment) })?.cost;
      const told = result.status === "fits" ? result.fit.cost : undefined;
      const about = JSON.stringify(plain);
      if (best === undefined || told === undefined) expect(told, about).toBe(best);
      else expect(Math.abs(told - best), about).toBeLessThan(costTolerance);
    }
  });

  test("are knitted from their sheets alone, and end on no needle", () => {
    for (const { plain, garment, result } of judged) {
      if (result.status !== "fits") continue;
      const { fit } = result;
      const sheetPieces = sheetPiecesOf(fit);
      for (const sheetPiece of sheetPieces) {
        const piece = fit.pieces.find(({ name }) => name === sheetPiece.piece)!;
        const report = knit(sheetPiece, { bedNeedles: garment.bed.needles, carriage: piece.carriage });
        const about = JSON.stringify(plain);
        expect(report.violations, about).toEqual([]);
        expect(report.rows, about).toBe(piece.rows);
        expect(report.needlesAtEnd, about).toEqual([]);
      }
    }
  });

  test("add and take single stitches on even rows only, where that is asked for", () => {
    let shaped = 0;
    for (const { garment } of judged)
      for (const piece of garment.pieces) {
        if (piece.shapingOn !== "even rows") continue;
        const counted = countPiece(piece, groundStitch(garment.gauge));
        for (const edge of [counted.left, counted.right])
          for (let row = 1; row < edge.length; row++) {
            if (Math.abs(edge[row]! - edge[row - 1]!) !== 1) continue;
            expect(row % 2).toBe(0);
            shaped++;
          }
      }
    expect(shaped).toBeGreaterThan(500);
  });

  test("are charted, wherever they lie", () => {
    let drawn = 0;
    for (const { result } of judged.slice(0, 60)) {
      if (result.status !== "fits") continue;
      for (const piece of result.fit.pieces) {
        const svg = chartSvg(sceneOf(result.fit, piece.name), { view: "knitter" });
        expect(svg).not.toMatch(/NaN|Infinity|undefined/);
        drawn++;
      }
    }
    expect(drawn).toBeGreaterThan(30);
  });
});
