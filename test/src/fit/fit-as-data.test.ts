import { expect, test } from "vitest";
import { type Fit, lookOf, pieceOf, withCost } from "../../../src/fit/fit.ts";
import { makeTerm } from "../../../src/fit/terms.ts";

const fit = {
  garment: {},
  terms: [makeTerm("length", 2, "rows", {}, {}), makeTerm("balance", 4, "rows", {}, {})],
  looks: [{ motif: { name: "plait" } }, { motif: { name: "rope" } }],
  placements: [],
  pieces: [{ name: "front" }, { name: "sleeve" }],
} as unknown as Omit<Fit, "cost">;

test("a fit costs what its terms cost together", () => {
  // Two rows of length at 3 and four of balance at a half.
  expect(withCost(fit)).toEqual({ ...fit, cost: 8 });
});

test("its looks and pieces are found by their names", () => {
  const whole = withCost(fit);
  expect(["rope", "plait"].map((name) => lookOf(whole, name))).toEqual([fit.looks[1], fit.looks[0]]);
  expect(["sleeve", "front"].map((name) => pieceOf(whole, name))).toEqual([fit.pieces[1], fit.pieces[0]]);
});
