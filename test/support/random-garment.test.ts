import { describe, expect, test } from "vitest";
import { exhaustiveBest } from "./exhaustive.ts";
import type { GarmentFile, PieceEntry, PlacementEntry } from "./garment-file.ts";
import { sampleGarments } from "./random-garment.ts";
import { clothOf, markRow, rowOf, wantedEdge } from "./referee/cloth.ts";
import { lengthMm } from "./referee/entries.ts";

const garments = sampleGarments(200, 11);

const piecesOf = (garment: GarmentFile): PieceEntry[] => Object.values(garment.pieces);
const share = (holds: (garment: GarmentFile) => boolean): number =>
  garments.filter(holds).length / garments.length;
const placed = (holds: (placement: PlacementEntry) => boolean) => (garment: GarmentFile) =>
  garment.place.some(holds);
const shaped = (holds: (piece: PieceEntry) => boolean) => (garment: GarmentFile) =>
  piecesOf(garment).some(holds);

describe("random garments", () => {
  test("are the same for the same seed, and others for another", () => {
    expect(sampleGarments(200, 11)).toEqual(garments);
    expect(sampleGarments(200, 12)).not.toEqual(garments);
  });

  test("have a fit more often than not, and often enough have none", () => {
    const fitting = share((garment) => exhaustiveBest(garment) !== undefined);
    expect(fitting).toBeGreaterThan(0.6);
    expect(fitting).toBeLessThan(0.9);
  });

  test("have everything that a garment may have, each in a good number of them", () => {
    const steps = ({ outline }: PieceEntry): boolean =>
      outline.some(({ height }, index) => height === outline[index + 1]?.height);
    const motifs = (garment: GarmentFile) => Object.values(garment.motifs);
    const features: Record<string, (garment: GarmentFile) => boolean> = {
      "one placement": ({ place }) => place.length === 1,
      "three placements or more": ({ place }) => place.length >= 3,
      "a shared motif": ({ place }) => new Set(place.map(({ motif }) => motif)).size < place.length,
      "a shared piece": ({ place }) => new Set(place.map(({ on }) => on)).size < place.length,
      "a crossed cord": (garment) =>
        motifs(garment).some((motif) => "like" in motif && motif.like === "crossed cord"),
      "a cable": (garment) =>
        motifs(garment).some((motif) => "like" in motif && motif.like === "transferred cable"),
      "draw-in": (garment) => motifs(garment).some((motif) => "draw-in" in motif),
      "a motif in full": (garment) => motifs(garment).some((motif) => "kind" in motif),
      rules: (garment) => motifs(garment).some((motif) => motif.rules !== undefined),
      "ease of its own": (garment) => motifs(garment).some((motif) => "ease" in motif),
      "weights of its own": ({ weights }) => weights !== undefined,
      "standard weights": ({ weights }) => weights === undefined,
      "a neck": shaped(({ neck }) => neck !== undefined),
      "sides of their own": shaped(({ outline }) => outline.some((station) => "left" in station)),
      "a step": shaped(steps),
      growth: shaped(({ grow }) => grow !== undefined),
      "free sides": placed(({ margins }) => margins?.left !== undefined),
      "a least side": placed(({ margins }) => margins?.side !== undefined),
      "several columns": placed(({ gap }) => gap !== undefined),
      "the neck as a mark": placed(({ to }) => to === "neck"),
    };
    for (const [feature, holds] of Object.entries(features))
      expect(share(holds), feature).toBeGreaterThan(0.04);
  });

  test("are held by their beds, stand on whole needles and rows, and have fields of some rows", () => {
    for (const garment of garments) {
      const cloth = clothOf(garment);
      for (const piece of piecesOf(garment)) {
        for (const station of piece.outline) {
          const row = rowOf(station.height, cloth);
          for (const side of ["left", "right"] as const) {
            const needles = wantedEdge(piece, cloth, [], side)(row);
            expect(needles).toBeGreaterThanOrEqual(3);
            expect(needles).toBeLessThanOrEqual(garment.bed.needles / 2);
          }
          // No length lies just between two counts, where the last digit would decide.
          const rows = lengthMm(station.height) / cloth.rowMm;
          expect(Math.abs((rows % 1) - 0.5)).toBeGreaterThan(1e-7);
        }
      }
      for (const { on, from, to } of garment.place) {
        const piece = garment.pieces[on]!;
        expect(markRow(piece, to, cloth) - markRow(piece, from, cloth)).toBeGreaterThan(10);
      }
    }
  });

  test("are as they are wished", () => {
    const wished = sampleGarments(60, 3, {
      placements: [2, 3],
      motifs: 1,
      kinds: ["cable"],
      necks: false,
      sharedPieces: false,
    });
    for (const { place, motifs, pieces } of wished) {
      expect([2, 3]).toContain(place.length);
      expect(new Set(place.map(({ on }) => on)).size).toBe(place.length);
      expect(Object.values(motifs)).toHaveLength(1);
      expect(Object.values(motifs)[0]).toMatchObject({ like: "transferred cable" });
      expect(Object.values(pieces).every(({ neck }) => neck === undefined)).toBe(true);
    }
  });

  test("leave a gap unsaid where there is never more than one column", () => {
    for (const { place } of garments) {
      for (const { columns, gap } of place)
        if (columns === undefined || columns === 1) expect(gap).toBeUndefined();
    }
  });
});
