import { expect, test } from "vitest";
import type { Fit } from "../../../src/fit/fit.ts";
import { phaseWords } from "../../../src/report/phase-words.ts";
import { garmentText } from "../../support/garment-text.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

const outline = "outline: [{ height: 0 cm, width: 24 cm }, { height: 36 cm, width: 24 cm }]";

async function fitOf(place: string): Promise<Fit> {
  const text = garmentText({
    pieces: `pieces:\n  front: { ${outline}, marks: { underarm: 30 cm } }\n  back: { ${outline}, marks: { underarm: 30 cm } }`,
    motifs: "motifs:\n  plait: { like: crossed cord, interval: 4, spread: 3 }",
    place,
  });
  const result = await fitHere(soundGarment(text), { rivals: 0 });
  if (result.status !== "fits") throw new Error(result.status);
  return result.fit;
}

test("tells where a motif stands at a mark it meets, and how pieces match there", async () => {
  const margins = "margins: { bottom: 0..9, top: 0..20 }";
  const fit = await fitOf(`place:
  - { motif: plait, on: front, to: bind-off, ${margins}, meet: { mark: underarm, at: 3 } }
  - { motif: plait, on: back, to: bind-off, ${margins} }
match: [{ motif: plait, on: [front, back], mark: underarm }]`);
  const [front, back] = fit.placements;
  expect(phaseWords(fit, front!)).toEqual([
    "at underarm it is 3 rows into a repeat of 8",
    "at underarm it is 3 rows into a repeat of 8, alike on front and back",
  ]);
  expect(phaseWords(fit, back!)).toEqual([
    "at underarm it is 3 rows into a repeat of 8, alike on front and back",
  ]);
  // The row itself: lead-in of 4 rows, then repeats of 8.
  const piece = fit.pieces[1]!;
  expect((piece.marks.get("underarm")! - back!.firstRow - 4) % 8).toBe(3);
});

test("says nothing where nothing is asked", async () => {
  const fit = await fitOf("place: [{ motif: plait, on: front }, { motif: plait, on: back }]");
  expect(phaseWords(fit, fit.placements[0]!)).toEqual([]);
});
