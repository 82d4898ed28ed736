import { describe, expect, test } from "vitest";
import {
  farEase,
  farQuantity,
  isNarrowestBest,
  leastQuantity,
  near,
} from "../../../../src/fit/refusal/far.ts";
import { type Allowed, anyFrom, only } from "../../../../src/garment/allowed.ts";
import type { Placement } from "../../../../src/garment/garment.ts";
import type { Motif, Quantity } from "../../../../src/motif/motif.ts";

const quantity = (allowed: Allowed): Quantity => ({ name: "spread", unit: "needles", allowed });

describe("how far a quantity is looked for", () => {
  test.each([
    [1, 12],
    [2, 12],
    [3, 6],
    [4, 3],
    [5, 3],
  ])("with %i quantities a motif's may change by %i", (count, far) => {
    const quantities = Array.from({ length: count }, () => quantity(only(4)));
    expect(farQuantity({ quantities } as unknown as Motif)).toBe(far);
  });

  test("ease is looked for from half too short to three times as long", () => {
    expect(farEase).toEqual({ from: -0.5, to: 2 });
  });
});

describe("the least that a quantity may be turned into", () => {
  test.each<[string, Allowed, number]>([
    ["a length stays one: at least 1", only(3, 5), 1],
    ["of 1 already, too", only(1, 2), 1],
    ["an open length, too", anyFrom(2), 1],
    ["where 0 is allowed it stays so", only(0, 2), 0],
    ["from 0 on, too", anyFrom(0), 0],
    ["a place left of the centre may be any place", only(-3, 2), -10_000],
    ["from such a place on, too", anyFrom(-1), -10_000],
  ])("%s", (_, allowed, least) => {
    expect(leastQuantity(quantity(allowed))).toBe(least);
  });
});

describe("what is near", () => {
  test("every whole number up to so far from one of a list, each once and in order", () => {
    expect(near(only(8, 3), 1, 0)).toEqual(only(2, 3, 4, 7, 8, 9));
    expect(near(only(3, 4), 2, 0)).toEqual(only(1, 2, 3, 4, 5, 6));
  });

  test("nothing below the least but what the list allows itself", () => {
    expect(near(only(2, 5), 2, 4)).toEqual(only(2, 4, 5, 6, 7));
    expect(near(only(2), 2, 2)).toEqual(only(2, 3, 4));
  });

  test("an open range opens as far down, not below the least", () => {
    expect(near(anyFrom(10), 3, 1)).toEqual(anyFrom(7));
    expect(near(anyFrom(3), 3, 1)).toEqual(anyFrom(1));
  });
});

test.each<[Placement["margins"]["sides"], boolean]>([
  [{ kind: "centred", least: 2 }, true],
  [{ kind: "free", left: only(2), right: only(2) }, false],
])("a panel of %j is best off when it is narrowest: %s", (sides, expected) => {
  expect(isNarrowestBest({ margins: { sides } } as Placement)).toBe(expected);
});
