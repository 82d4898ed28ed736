import { describe, expect, test } from "vitest";
import { onHandRules } from "../../../../src/fit/refusal/on-hand-rules.ts";
import type { Garment, OnHand, Supply } from "../../../../src/garment/garment.ts";

const cord: Supply = { path: ["on hand", "cord"], of: "cord", amount: 4, unit: "m" };
const yarn: Supply = {
  path: ["on hand", "ground yarn"],
  of: "ground yarn",
  amount: 300,
  unit: "g",
  balls: { count: 6, each: { amount: 50, unit: "g" } },
};

/** The rules read nothing of a garment but what is on hand. */
const garment = (onHand?: OnHand): Garment =>
  ({ title: "strip", ...(onHand && { onHand }) }) as unknown as Garment;

const stocked = (...supplies: Supply[]): Garment => garment({ supplies, leastWaste: true });

describe("what is on hand", () => {
  test("is a rule for each thing, at its place in the file and as a knitter says it", () => {
    expect(onHandRules(stocked(cord, yarn)).map(({ rule, path, words }) => ({ rule, path, words }))).toEqual([
      { rule: "on hand.cord", path: ["on hand", "cord"], words: "only 4 m of cord is on hand" },
      {
        rule: "on hand.ground yarn",
        path: ["on hand", "ground yarn"],
        words: "only 300 g of ground yarn (6 balls) is on hand",
      },
    ]);
  });

  test("is none where the file names nothing", () => {
    expect(onHandRules(garment())).toEqual([]);
  });

  test("limits the other things still once one is lifted, and the wish for little waste stays", () => {
    const [ofCord, ofYarn] = onHandRules(stocked(cord, yarn));
    expect(ofCord!.lift(stocked(cord, yarn))).toEqual(stocked(yarn));
    expect(ofYarn!.lift(stocked(cord, yarn))).toEqual(stocked(cord));
  });

  test("limits nothing once the last is lifted, however often", () => {
    const [ofCord, ofYarn] = onHandRules(stocked(cord, yarn));
    const lifted = ofYarn!.lift(ofCord!.lift(stocked(cord, yarn)));
    expect(lifted).toStrictEqual(garment());
    expect(ofCord!.lift(lifted)).toStrictEqual(garment());
  });
});
