import fc from "fast-check";
import { expect, test } from "vitest";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { createAnyFit } from "../../src/fit/refusal/any-fit.ts";
import { exhaustiveBest } from "../support/exhaustive.ts";
import type { GarmentFile, MarginsEntry } from "../support/garment-file.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { fitHere, garmentOf } from "../support/run-garment.ts";
import { threeByFour } from "../support/three-by-four.ts";

/** Rows are 4 mm high, stitches 3 mm wide. */
const rows = (count: number): string => `${4 * count} mm`;

const ends = fc.constantFrom<MarginsEntry["bottom"] | undefined>(
  undefined,
  0,
  "0..1",
  "0..3",
  [0, 2],
  "1..4",
);
const across = fc.constantFrom<MarginsEntry>(
  {},
  { side: { least: 2 } },
  { left: "0..20", right: "0..20" },
  { left: "0..9", right: "0..30" },
);

const margins = fc.record({ bottom: ends, top: ends, across }).map(
  ({ bottom, top, across: sides }): MarginsEntry => ({
    ...(bottom !== undefined && { bottom }),
    ...(top !== undefined && { top }),
    ...sides,
  }),
);

const placement = fc.record({ margins, repeats: fc.constantFrom(1, 2, [1, 2], "1..3"), motif: fc.nat(1) });

const garments = fc
  .record({
    low: fc.integer({ min: 8, max: 22 }),
    high: fc.integer({ min: 8, max: 22 }),
    change: fc.record({ grow: fc.nat(2), shrink: fc.nat(2) }),
    width: fc.integer({ min: 6, max: 12 }),
    taper: fc.integer({ min: -3, max: 3 }),
    places: fc.tuple(placement, placement),
  })
  .map(({ low, high, change, width, taper, places }): GarmentFile => {
    const cord = (interval: number, spread: number) => ({
      like: "crossed cord" as const,
      interval,
      spread,
      ease: { from: "-35 %", to: "50 %" },
    });
    const place = places.map(({ motif, repeats, margins: own }, index) => ({
      motif: ["small", "wide"][motif]!,
      on: "panel",
      from: ["cast-on", "middle"][index]!,
      to: ["middle", "bind-off"][index]!,
      repeats: { allow: repeats, prefer: 2 },
      margins: own,
    }));
    return {
      ...threeByFour,
      pieces: {
        panel: {
          outline: [
            { height: "0 mm", width: `${6 * width} mm` },
            { height: rows(low + high), width: `${6 * (width + taper)} mm` },
          ],
          marks: { middle: rows(low) },
          grow: rows(change.grow),
          shrink: rows(change.shrink),
        },
      },
      motifs: { small: cord(2, 3), wide: cord(3, 4) },
      place,
    };
  });

test("motifs one above the other are laid as an exhaustive search lays them, with no margin between them or some", async () => {
  let [found, touching] = [0, 0];
  await fc.assert(
    fc.asyncProperty(garments, async (plain) => {
      const placed = new Set(plain.place.map(({ motif }) => motif));
      const motifs = Object.fromEntries(Object.entries(plain.motifs).filter(([name]) => placed.has(name)));
      const file = { ...plain, motifs };
      const garment = garmentOf(file);
      const referee = exhaustiveBest(file, { edges: edgesOf(garment) });
      const result = await fitHere(garment, { rivals: 1 });
      const about = JSON.stringify(file);
      if (result.status === "fits") {
        expect(result.fit.cost, about).toBeCloseTo(referee!.cost, 6);
        found += 1;
        const [low, high] = result.fit.placements;
        if (low!.margins.top === 0 || high!.margins.bottom === 0) touching += 1;
      } else expect(referee, about).toBeUndefined();
      expect(await createAnyFit(garment, simplexEngine)(garment), about).toBe(result.status === "fits");
    }),
    { numRuns: 80, seed: 20_261_130 },
  );
  // Most of them fit, and where one of two stands on the row between them the other may not.
  expect([found > 25, touching > 5]).toEqual([true, true]);
});
