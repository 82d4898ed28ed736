import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { stepsDone } from "../../../../src/cloth/spacing.ts";
import { buildSheet } from "../../../../src/sheet/build-sheet.ts";
import { shapingPassages } from "../../../../src/sheet/shaping/shaping-passages.ts";
import type { Action, SheetPiece } from "../../../../src/sheet/sheet.ts";
import { sampleGarments } from "../../../support/random-garment.ts";
import { fitHere, garmentOf, soundGarment } from "../../../support/run-garment.ts";
import { pieceWith } from "./support/pieces.ts";
import { stepsOfSheet, stepsOfWords } from "./support/same-steps.ts";

async function piecesOf(garment: ReturnType<typeof garmentOf>): Promise<readonly SheetPiece[]> {
  const result = await fitHere(garment);
  return result.status === "fits" ? buildSheet(result.fit).pieces : [];
}

const sample = (name: string) =>
  piecesOf(soundGarment(readFileSync(new URL(`../../../../samples/${name}`, import.meta.url), "utf8")));

const words = (piece: SheetPiece): readonly string[] => shapingPassages(piece).map((one) => one.words);

describe("shaping of garments in words", () => {
  test("both sides are said once, the first row by its number, and turns as turns", async () => {
    const [sleeve] = await sample("sleeve.yaml");
    expect(shapingPassages(sleeve!)).toEqual([
      {
        fromRow: 5,
        toRow: 98,
        block: "whole",
        words: "increase 1 at each side on row 5, then every 8th and 9th row by turns 11 times, to row 98",
      },
    ]);
  });

  test("each half above a neck has passages of its own, after those of the whole piece", async () => {
    const [front] = await sample("front.yaml");
    expect(shapingPassages(front!).map(({ block, words: said }) => `${block}: ${said}`)).toEqual([
      "whole: bind off 7 at the right on row 144",
      "whole: bind off 7 at the left on row 145",
      "whole: decrease 1 at each side on rows 146, 149, 152, 156 and 159",
      "whole: bind off 20 at the centre on row 200",
      "first half: decrease 1 at the neck edge on rows 201, 203, 204, 206, 207, 208, 210, 211, 213, 214, 216 and 224",
      "second half: decrease 1 at the neck edge on rows 201, 203, 204, 206, 207, 208, 210, 211, 213, 214, 216 and 224",
    ]);
  });

  test("a piece shaped on even rows only has the carriage at its starting side at each step", async () => {
    const text = readFileSync(new URL("../../../../samples/sleeve.yaml", import.meta.url), "utf8");
    const [sleeve] = await piecesOf(
      soundGarment(text.replace("    outline:", "    shaping: even rows\n    outline:")),
    );
    const steps = sleeve!.rows.filter(({ do: actions }) => actions.some(({ act }) => act === "increase"));
    expect(steps).toHaveLength(12);
    expect(new Set(steps.map(({ carriage }) => carriage))).toEqual(new Set(["right"]));
    expect(words(sleeve!)[0]).toMatch(/^increase 1 at each side on rows? 6, /);
  });

  test("a knitter with nothing but the words shapes the sheet's rows: samples and garments drawn by lot", async () => {
    const garments = sampleGarments(200, 20261125).map(garmentOf);
    const drawn = await Promise.all(garments.map(piecesOf));
    const own = await Promise.all(
      ["sleeve.yaml", "front.yaml", "cable-sleeve.yaml", "scarf.yaml"].map(sample),
    );
    const pieces = [...own, ...drawn].flat();
    expect(pieces.length).toBeGreaterThan(200);
    for (const piece of pieces) expect(stepsOfWords(piece)).toEqual(stepsOfSheet(piece));
  }, 120_000);

  test("the same for any rows and amounts, and steps spread evenly never take more numbers than their rows", () => {
    const gaps = fc.array(
      fc.record({ gap: fc.integer({ min: 1, max: 24 }), needles: fc.integer({ min: 2, max: 4 }) }),
      {
        minLength: 1,
        maxLength: 40,
      },
    );
    fc.assert(
      fc.property(gaps, (steps) => {
        let row = 0;
        const piece = pieceWith(
          steps.map(({ gap, needles }): [number, Action] => {
            row += gap;
            return [row, { act: "bind-off", side: "left", needles }];
          }),
        );
        expect(stepsOfWords(piece)).toEqual(stepsOfSheet(piece));
      }),
      { seed: 5, numRuns: 500 },
    );
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 60 }), (rows, count) => {
        fc.pre(count <= rows);
        const at = Array.from({ length: rows }, (_, index) => index + 1).filter(
          (row) => stepsDone(rows, count, row) > stepsDone(rows, count, row - 1),
        );
        const piece = pieceWith(at.map((row) => [row, { act: "decrease", side: "left", needles: 1 }]));
        expect(stepsOfWords(piece)).toEqual(stepsOfSheet(piece));
        const numbers = words(piece)[0]!.match(/\d+/g)!;
        expect(numbers.length).toBeLessThanOrEqual(at.length + 2);
      }),
      { seed: 6, numRuns: 500 },
    );
  });
});
