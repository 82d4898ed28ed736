import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { prepareCord } from "../../src/cord/preparation.ts";
import { drawingsIn, loadDrawings } from "../../src/drawing-file/load-drawings.ts";
import { readGarment } from "../../src/garment/read-garment.ts";
import { knit } from "../support/bed-simulator.ts";
import { fitHere } from "../support/run-garment.ts";
import { sheetPiecesOf } from "../support/sheet-of.ts";

const samples = ["samples", "samples/motifs"].flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith(".yaml"))
    .map((name) => `${folder}/${name}`),
);

/** The one sample that is there to show what is said where nothing fits. */
const unfitting = "samples/too-narrow.yaml";

describe.each(samples)("%s", (file) => {
  test("is knitted from its sheet alone, with the cord that is prepared", async () => {
    const text = readFileSync(file, "utf8");
    const drawing = drawingsIn(await loadDrawings(text, file));
    const garment = readGarment(text, file, { drawing }).garment!;
    const result = await fitHere(garment, { rivals: 0 });
    expect(result.status).toBe(file === unfitting ? "does not fit" : "fits");
    if (result.status !== "fits") return;
    const { fit } = result;
    const sheetPieces = sheetPiecesOf(fit);
    for (const sheetPiece of sheetPieces) {
      const piece = fit.pieces.find(({ name }) => name === sheetPiece.piece)!;
      const report = knit(sheetPiece, {
        bedNeedles: garment.bed.needles,
        carriage: piece.carriage,
        // Braids and lattices change their order of work from row to row.
        orders: Object.fromEntries(fit.looks.map(({ motif }) => [motif.name, "row by row" as const])),
        ...(garment.gauge.cord && { cordNeedles: garment.gauge.cord.needles }),
      });
      expect(report.violations).toEqual([]);
      expect(report.rows).toBe(piece.rows);
      expect(report.needlesAtEnd).toEqual([]);
      const prepared = fit.placements
        .filter((placement) => placement.piece === piece.name)
        .reduce((sum, placement) => sum + (prepareCord(fit, placement)?.used ?? 0), 0);
      expect(report.cordStitches).toBe(prepared);
    }
  });
});
