import { describe, expect, test } from "vitest";
import { awayFrom, costOf, makeTerm } from "../../../src/fit/terms.ts";
import { anyFrom } from "../../../src/garment/allowed.ts";

describe("what a fit gives up", () => {
  test("costs its weight for each unit, as the garment says", () => {
    expect(makeTerm("balance", 3, "rows", { balance: 2 }, { placement: 1 })).toEqual({
      term: "balance",
      placement: 1,
      amount: 3,
      unit: "rows",
      weight: 2,
      cost: 6,
    });
  });

  test("costs what is usual where the garment does not say", () => {
    // A row of length 3, and 1 for what has no usual weight.
    expect(makeTerm("length", 2, "rows", { balance: 2 }, {}).cost).toBe(6);
    expect(makeTerm("twist", 2, "rows", { balance: 2 }, { motif: "plait" })).toMatchObject({
      weight: 1,
      cost: 2,
    });
  });

  test("costs the sum of its terms, nothing where it gives nothing up", () => {
    const terms = [makeTerm("twist", 2, "rows", {}, {}), makeTerm("length", 2, "rows", {}, {})];
    expect(costOf(terms)).toBe(8);
    expect(costOf([])).toBe(0);
  });
});

test.each([
  [7, 5, 2],
  [3, 5, 2],
  [5, 5, 0],
  [7, undefined, 0],
  [7, 0, 7],
])("a value of %d is away from the preferred %s by %d", (value, prefer, away) => {
  expect(awayFrom({ allowed: anyFrom(0), ...(prefer !== undefined && { prefer }) }, value)).toBe(away);
});
