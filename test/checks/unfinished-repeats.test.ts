import { beforeAll, describe, expect, test } from "vitest";
import { prepareCord } from "../../src/cord/preparation.ts";
import { checkFit, describeBreaches } from "../../src/fit/check.ts";
import type { Fit, FittedPart, FittedPlacement } from "../../src/fit/fit.ts";
import { lookOf } from "../../src/fit/fit.ts";
import type { FitResult } from "../../src/fit/solve.ts";
import { knit, type SheetPiece } from "../support/bed-simulator.ts";
import { exhaustiveBest } from "../support/exhaustive.ts";
import type { GarmentFile } from "../support/garment-file.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { fitHere, garmentOf } from "../support/run-garment.ts";
import { sheetPiecesOf } from "../support/sheet-of.ts";

const costTolerance = 1e-6;
const count = 80;

const judged: { readonly plain: GarmentFile; readonly result: FitResult }[] = [];

beforeAll(async () => {
  const wishes = { unfinished: true, evenRows: true, sharedPieces: false };
  const kinds = ["sample", "band"] as const;
  for (const plain of [
    ...sampleGarments(count, 20261130, { ...wishes, mirrored: true }),
    ...sampleGarments(count / 2, 20261201, { ...wishes, kinds, placements: [1, 2] }),
  ])
    judged.push({ plain, result: await fitHere(garmentOf(plain), { rivals: 1 }) });
});

const fits = (): { plain: GarmentFile; fit: Fit; rivals: readonly Fit[] }[] =>
  judged.flatMap(({ plain, result }) =>
    result.status === "fits" ? [{ plain, fit: result.fit, rivals: result.rivals }] : [],
  );

const withPart = (): { fit: Fit; fitted: FittedPlacement; part: FittedPart }[] =>
  fits().flatMap(({ fit }) =>
    fit.placements.flatMap((fitted) => (fitted.part ? [{ fit, fitted, part: fitted.part }] : [])),
  );

const least = (allow: unknown): number => {
  if (allow === undefined) return 0;
  if (typeof allow === "number") return allow;
  if (typeof allow === "string") return Number(allow.split("..")[0]);
  return Math.min(...(allow as readonly number[]));
};

describe("random garments whose repeats are worked in part where they cannot be finished", () => {
  test("cost what an exhaustive search finds that knows of no parts", () => {
    for (const { plain, result } of judged.slice(0, count)) {
      const referee = exhaustiveBest(plain, { edges: edgesOf(garmentOf(plain)) });
      const told = result.status === "fits" ? result.fit.cost : undefined;
      const about = JSON.stringify(plain);
      if (referee === undefined || told === undefined) expect(told, about).toBe(referee?.cost);
      else expect(Math.abs(told - referee.cost), about).toBeLessThan(costTolerance);
    }
    expect(withPart().length).toBeGreaterThan(count / 4);
    expect(withPart().some(({ fit, fitted }) => lookOf(fit, fitted.motif).motif.kind === "band")).toBe(true);
  });

  test("are knitted from their sheets, inside field, cloth and margins, and by the cord that is told", () => {
    for (const { plain, fit, rivals } of fits())
      for (const one of [fit, ...rivals]) {
        const sheetPieces = sheetPiecesOf(one);
        for (const sheetPiece of sheetPieces) knitPiece(plain, one, sheetPiece);
      }
  });

  test("are refused where a part goes a hanging further, a hanging less far, or is left out", () => {
    let further = 0;
    for (const { fit, fitted, part } of withPart()) {
      const told = (other: FittedPart | undefined): string => {
        const { part: _, ...rest } = fitted;
        const changed = other ? { ...rest, part: other } : rest;
        const placements = fit.placements.map((one) => (one === fitted ? changed : one));
        return describeBreaches(checkFit(fit.garment, { ...fit, placements }, fit.cost));
      };
      expect(told(part)).toBe("");
      expect(told(undefined)).toContain("its part is told");
      part.columns.forEach((more, column) => {
        for (const [name, made] of Object.entries(more))
          for (const other of [made + 1, made - 1]) {
            const columns = part.columns.map((one, at) => (at === column ? { ...one, [name]: other } : one));
            expect(told({ ...part, columns })).toContain("its part is told");
            further++;
          }
      });
    }
    expect(further).toBeGreaterThan(count);
  });
});

function knitPiece(plain: GarmentFile, fit: Fit, sheetPiece: SheetPiece): void {
  const about = JSON.stringify(plain);
  const piece = fit.pieces.find(({ name }) => name === sheetPiece.piece)!;
  const report = knit(sheetPiece, {
    bedNeedles: fit.garment.bed.needles,
    carriage: piece.carriage,
    // A braid's order changes from row to row, and is held to elsewhere.
    orders: Object.fromEntries(fit.looks.map(({ motif }) => [motif.name, "row by row"])),
  });
  expect(report.violations, about).toEqual([]);
  const placed = fit.placements.filter((placement) => placement.piece === piece.name);
  const used = placed.reduce((sum, placement) => sum + (prepareCord(fit, placement)?.used ?? 0), 0);
  expect(report.cordStitches, about).toBe(used);
  const [fitted] = placed;
  if (!fitted || placed.length > 1) return;
  const { margins } = plain.place[fitted.index]!;
  const side = { left: margins?.left ?? margins?.side?.least, right: margins?.right ?? margins?.side?.least };
  const worked = [
    ...report.hangings.map(({ row, needle }) => ({ row, from: needle, to: needle })),
    ...report.crossings,
  ];
  const highest = piece.marks.get(plain.place[fitted.index]!.to)! - least(margins?.top);
  for (const { row, from, to } of worked) {
    expect(row, about).toBeLessThanOrEqual(highest);
    expect(piece.left[row]! + (from > 0 ? from - 1 : from), about).toBeGreaterThanOrEqual(least(side.left));
    expect(piece.right[row]! - (to > 0 ? to : to + 1), about).toBeGreaterThanOrEqual(least(side.right));
  }
  const lastRow = Math.max(0, ...worked.map(({ row }) => row), ...report.patterns.map((run) => run.lastRow));
  expect(lastRow, about).toBe(endOf(fitted, report.crossings.length > 0, lastRow));
}

/** A cable's last crossing may lie below the row at which its last repeat ends. */
const endOf = ({ part, lastRow }: FittedPlacement, crosses: boolean, found: number): number =>
  crosses && !part ? Math.min(found, lastRow) : (part?.lastRow ?? Math.min(found, lastRow));
