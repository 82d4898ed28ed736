import { expect, test } from "vitest";
import { finishSection } from "../../../../src/sheet/document/finish.ts";
import { band, cable, laid, plait, smallGarment, strip } from "../../../support/small-garment.ts";
import { bare, fitOf, plainGarment } from "../support/small-fits.ts";

const wash =
  "Wash and rest the pieces as you did the swatch, then compare their width and length with the finished measurements.";
const ends = "Take the cord's ends through to the back and sew them in; leave none hanging free.";

const said = (fit: Parameters<typeof finishSection>[0]): readonly string[] =>
  finishSection(fit).content.map((one) => (one.kind === "paragraph" ? one.text : one.kind));

test("pieces are washed and measured as the swatch was", () => {
  expect(finishSection(bare(plainGarment())).title).toBe("Finish");
  expect(said(bare(plainGarment()))).toEqual([wash]);
});

test("a cord's ends are sewn in, wherever one is laid", async () => {
  const fit = await fitOf(
    smallGarment({
      pieces: { back: strip(20, 8), front: strip(20, 12) },
      motifs: { dots: band(2, 4), plait: plait(4, 3), rope: cable(4) },
      place: [laid("dots", "back"), laid("plait", "front")],
    }),
  );
  expect(said(fit)).toEqual([ends, wash]);
  expect(said({ ...fit, placements: fit.placements.slice(0, 1) })).toEqual([wash]);
});
