import { beforeAll, expect, test } from "vitest";
import type { Fit } from "../../../src/fit/fit.ts";
import { onlyPieces } from "../../../src/sheet/only-pieces.ts";
import { band, laid, smallGarment, strip } from "../../support/small-garment.ts";
import { fitOf } from "./support/small-fits.ts";

let fit: Fit;
beforeAll(async () => {
  fit = await fitOf(
    smallGarment({
      pieces: { front: strip(12, 8), back: strip(12, 8), cuff: strip(12, 4) },
      motifs: { dots: band(2, 4) },
      place: [laid("dots", "front"), laid("dots", "back"), laid("dots", "cuff")],
    }),
  );
});

test("a sheet of some pieces has these and what lies on them, in the order of the file, and is of the same garment", () => {
  const some = onlyPieces(fit, ["cuff", "front"]);
  expect(some.pieces.map(({ name }) => name)).toEqual(["front", "cuff"]);
  expect(some.placements.map(({ piece, index }) => [piece, index])).toEqual([
    ["front", 0],
    ["cuff", 2],
  ]);
  expect(some.garment).toBe(fit.garment);
  expect(some.looks).toBe(fit.looks);
  expect(onlyPieces(fit, []).pieces).toEqual([]);
});
