import { beforeAll, describe, expect, test } from "vitest";
import { checkFit } from "../../../../src/fit/check.ts";
import type { Fit, FittedPlacement } from "../../../../src/fit/fit.ts";
import type { Garment } from "../../../../src/garment/garment.ts";
import { fitHere } from "../../../support/run-garment.ts";
import { swing, written } from "./support/laid-by-hand.ts";

/** 9 repeats of 6 rows in 60, so that 3 rows stay below and above; each stretch just at the least ease of 0. */
let garment: Garment;
let fit: Fit;

beforeAll(async () => {
  const quantities = {
    interval: { ...swing.quantities.interval, allow: 3 },
    spread: { ...swing.quantities.spread, allow: 2 },
  };
  garment = written({ swing: { ...swing, quantities, ease: { from: "0 %", to: "20 %" } } }, [{ repeats: 9 }]);
  const result = await fitHere(garment, { rivals: 0 });
  if (result.status !== "fits") throw new Error("it has to fit");
  fit = result.fit;
});

const found = (asked: Partial<Garment> = {}, tampered: Partial<Fit> = {}, cost = fit.cost) =>
  checkFit({ ...garment, ...asked }, { ...fit, ...tampered }, cost).map((one) => `${one.rule}: ${one.found}`);

const tamper = (change: Partial<FittedPlacement>): Partial<Fit> => ({
  placements: fit.placements.map((placement) => ({ ...placement, ...change })),
});

describe("the independent check of a fit", () => {
  test("finds nothing of a sound one", () => {
    expect(fit.placements.map(({ firstRow, lastRow }) => [firstRow, lastRow])).toEqual([[3, 57]]);
    expect(found()).toEqual([]);
  });

  test("looks at what each motif looks like", () => {
    const looks = fit.looks.map((look) => ({
      ...look,
      values: new Map([
        ["interval", 3],
        ["spread", 4],
      ]),
    }));
    expect(found({}, { looks })).toContain("swing: spread: 4 is not allowed");
  });

  test("looks at where each motif lies", () => {
    expect(found({}, tamper({ repeats: 8 }))).toContain(
      "swing on panel: 8 repeats are told, its sections have 9",
    );
  });

  test("looks at what is worked in part", () => {
    const part = { lastRow: 60, rows: 3, columns: [{ cord: 1 }] };
    expect(found({}, tamper({ part }))).toEqual([
      "swing on panel: is worked in part where rows are to stay plain",
    ]);
  });

  test("looks at each piece", () => {
    expect(found({ bed: { ...garment.bed, needles: 18 } })[0]).toBe(
      "panel: row 0: 10 needles on the left, the bed has 9",
    );
  });

  test("looks at whether motifs keep clear of each other", () => {
    expect(found({}, { placements: [...fit.placements, ...fit.placements] })).toContain(
      "panel: swing and swing lie on the same needles and rows",
    );
  });

  test("looks at where a motif stands at marks", () => {
    const meet = [{ mark: "bind-off", at: "whole" as const }];
    expect(found({ placements: garment.placements.map((placement) => ({ ...placement, meet })) })).toEqual([
      "swing on panel: is 3 rows into a repeat of 6 at bind-off",
    ]);
  });

  test("looks at what its wearer may have", () => {
    const pieces = garment.pieces.map((piece) => ({ ...piece, part: "hood" as const }));
    expect(found({ pieces, wearer: { path: ["wearer"], ageYears: 5 } })).toEqual([
      "swing on panel: no cord may lie there for a young child",
    ]);
  });

  test("looks at every gauge where that is asked for", () => {
    const steady = found({ steady: 1 });
    expect(steady.length).toBeGreaterThan(0);
    expect(steady.every((one) => one.includes(", steady: "))).toBe(true);
  });

  test("looks at what is on hand", () => {
    const supply = { path: ["on hand"], of: "cord", unit: "m" } as const;
    const lasts = (amount: number) =>
      found({ onHand: { supplies: [{ ...supply, amount }], leastWaste: false } });
    expect(lasts(9)).toEqual([]);
    expect(lasts(0.2)).toHaveLength(1);
    expect(lasts(0.2)[0]).toMatch(/^on hand: cord: .* m of 0.2 m$/);
  });

  test("looks at what it costs", () => {
    expect(found({}, {}, fit.cost + 1)).toEqual([
      `cost: ${fit.cost} by the preferences, ${fit.cost + 1} by the engine`,
    ]);
  });
});
