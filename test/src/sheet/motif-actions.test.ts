import { beforeAll, expect, test } from "vitest";
import type { Fit } from "../../../src/fit/fit.ts";
import { motifActions } from "../../../src/sheet/motif-actions.ts";
import { band, cable, laid, plait, smallGarment, strip } from "../../support/small-garment.ts";
import { fitOf } from "./support/small-fits.ts";

let fit: Fit;
beforeAll(async () => {
  fit = await fitOf(
    smallGarment({
      pieces: { front: strip(20, 12), back: strip(40, 12) },
      motifs: { rope: cable(4), dots: band(2, 4), plait: plait(4, 3) },
      place: [
        laid("plait", "front"),
        laid("dots", "back", {}, { margins: { bottom: 0, top: 0, left: 2, right: "20..40" } }),
        laid("rope", "back", {}, { margins: { bottom: 4, top: 0, left: "20..40", right: 2 } }),
      ],
    }),
  );
});

/** Acts by row, each with its placement. */
const acts = (piece: string): readonly unknown[] =>
  [...motifActions(fit, piece)].map(([row, actions]) => [
    row,
    actions.map(({ act, placement }) => `${act} ${placement}`),
  ]);

test("a piece has what its own motifs ask for, row by row and on each row motif by motif", () => {
  expect(acts("back")).toEqual([
    [0, ["pattern 2"]],
    [4, ["pattern 2", "cross 3"]],
    [8, ["pattern 2", "cross 3"]],
    [12, ["plain 2", "cross 3"]],
  ]);
  expect(acts("front")).toEqual([
    [0, ["hang 1", "hang 1"]],
    [4, ["hang 1", "hang 1"]],
    [8, ["hang 1", "hang 1"]],
    [12, ["hang 1", "finish 1", "hang 1", "finish 1"]],
  ]);
  expect(acts("sleeve")).toEqual([]);
});
