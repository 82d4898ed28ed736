import { beforeAll, describe, expect, test } from "vitest";
import { checkCost } from "../../../../src/fit/check/check-cost.ts";
import type { Fit, FittedLook, FittedPlacement } from "../../../../src/fit/fit.ts";
import type { Garment, Supply } from "../../../../src/garment/garment.ts";
import { fitHere } from "../../../support/run-garment.ts";
import {
  fitOf,
  lookWith,
  placed,
  section,
  straight,
  stretch,
  swing,
  written,
} from "./support/laid-by-hand.ts";

/** Each term weighs another prime, so that no sum is like another. */
const weights = {
  length: 2,
  balance: 3,
  ease: 5,
  interval: 7,
  spread: 11,
  repeats: 13,
  columns: 17,
  gap: 19,
  waste: 23,
};

const preferring = {
  ...swing,
  quantities: {
    interval: { unit: "rows", allow: [3, 4], prefer: 3 },
    spread: { unit: "needles", allow: "2..9", prefer: 2 },
  },
  ease: { from: "-20 %", to: "20 %", prefer: "0 %" },
  reserve: "0 %",
};

const place = {
  repeats: { allow: "1..9", prefer: 5 },
  columns: { allow: "1..3", prefer: 1 },
  gap: { allow: "2..9", prefer: 4 },
};

/** What the preferences come to, as a fit is told that says it costs something else. */
function costOf(garment: Garment, fit: Fit): number {
  const found = checkCost(garment, { ...fit, cost: -1 }, -2);
  expect(found.map(({ rule }) => rule)).toEqual(["cost", "cost"]);
  const [cost] = found[0]!.found.split(" ");
  return Number(cost);
}

describe("the independent sum of what a fit gives up", () => {
  let garment: Garment;
  /** As everything is preferred. */
  let best: Fit;
  let look: FittedLook;
  const withLook = (more: Partial<FittedLook>): Fit => {
    const other = { ...look, ...more };
    return {
      ...best,
      looks: [other],
      placements: [{ ...best.placements[0]!, sections: [section(other, 5)] }],
    };
  };
  const withPlacement = (more: Partial<FittedPlacement>): Fit => ({
    ...best,
    placements: [{ ...best.placements[0]!, ...more }],
  });
  const margins = (bottom: number, top: number) => ({ bottom, top, left: 0, right: 0 });

  beforeAll(() => {
    garment = written({ cord: preferring }, [place], { weights });
    look = lookWith(garment.motifs[0]!, { interval: 3, spread: 2 }, [stretch(3, 3, 3)]);
    best = fitOf(garment, [placed([section(look, 5)], { margins: margins(15, 15) })], [straight(60, 10)]);
  });

  test("is nothing where all is as preferred", () => {
    expect(checkCost(garment, best, 0)).toEqual([]);
    expect(costOf(garment, best)).toBe(0);
  });

  test("is held against the sum of the terms and against the engine's", () => {
    const byTerms = { rule: "cost", found: "0 by the preferences, 1 by the sum of its terms" };
    const byEngine = { rule: "cost", found: "0 by the preferences, 2.5 by the engine" };
    expect(checkCost(garment, { ...best, cost: 1 }, 0)).toEqual([byTerms]);
    expect(checkCost(garment, best, 2.5)).toEqual([byEngine]);
    expect(checkCost(garment, { ...best, cost: 1 }, 2.5)).toEqual([byTerms, byEngine]);
  });

  test("forgives what sums lose in their last digits, and no more", () => {
    expect(checkCost(garment, { ...best, cost: 1e-6 }, -1e-6)).toEqual([]);
    expect(checkCost(garment, { ...best, cost: 1.1e-6 }, -1.1e-6)).toHaveLength(2);
  });

  test("is never what comes to no number", () => {
    expect(checkCost(garment, best, Number.NaN)).toHaveLength(1);
    expect(checkCost(garment, withLook({ values: new Map([["interval", 3]]) }), 0)).toHaveLength(2);
  });

  test.each<[string, () => Fit, number]>([
    [
      "a row of interval more",
      () =>
        withLook({
          values: new Map([
            ["interval", 4],
            ["spread", 2],
          ]),
        }),
      7,
    ],
    [
      "two needles of spread more",
      () =>
        withLook({
          values: new Map([
            ["interval", 3],
            ["spread", 4],
          ]),
        }),
      2 * 11,
    ],
    ["rows added", () => withPlacement({ change: 3 }), 3 * 2],
    ["rows taken away", () => withPlacement({ change: -2 }), 2 * 2],
    ["more rows below than above", () => withPlacement({ margins: margins(9, 5) }), 4 * 3],
    ["more rows above than below", () => withPlacement({ margins: margins(5, 10) }), 5 * 3],
    ["repeats less", () => withPlacement({ repeats: 2 }), 3 * 13],
    ["columns more", () => withPlacement({ columns: 3, gap: 4 }), 2 * 17],
    ["a gap less, between columns", () => withPlacement({ columns: 2, gap: 2 }), 17 + 2 * 19],
    ["a gap that is none, as there is one column", () => withPlacement({ gap: 0 }), 0],
  ])("counts %s", (_, changed, cost) => {
    expect(costOf(garment, changed())).toBe(cost);
    expect(checkCost(garment, { ...changed(), cost }, cost)).toEqual([]);
  });

  test("counts the ease in percentage points, the mean over the segments, loops left aside", () => {
    const eases = (...of: readonly number[]) => of.map((ease) => ({ ...stretch(3, 3, 3), ease }));
    // (4 + 10) / 2 percentage points from the preferred 0 %.
    expect(costOf(garment, withLook({ segments: eases(0.04, -0.1) }))).toBeCloseTo(5 * 7, 9);
    const loop = stretch(0, 2, 9, { fixed: 9, ease: 7 });
    expect(costOf(garment, withLook({ segments: [...eases(0.04, -0.1), loop] }))).toBeCloseTo(5 * 7, 9);
    expect(costOf(garment, withLook({ segments: [loop] }))).toBe(0);
  });

  test("adds up over all looks and all placements, each by its own preferences", () => {
    const both = written(
      {
        cord: preferring,
        band: {
          kind: "band",
          quantities: { hem: { unit: "stitches", allow: "1..5", prefer: 1 } },
          stitches: 4,
          repeat: 4,
          edge: ["hem", "hem"],
        },
      },
      [place, { motif: "band" }, { repeats: { allow: "1..9", prefer: 1 } }],
      { weights },
    );
    const [cord, band] = both.motifs;
    const cordLook = lookWith(cord!, { interval: 4, spread: 2 }, [{ ...stretch(3, 4, 3), ease: 0.02 }]);
    const bandLook = lookWith(band!, { hem: 3 });
    const fit = fitOf(
      both,
      [
        placed([section(bandLook, 2)], { index: 1, change: 1 }),
        placed([section(cordLook, 2)], { index: 2 }),
        placed([section(cordLook, 3)]),
      ],
      [],
    );
    // A quantity that is not weighed in the file costs 1 for each of its unit: two stitches of the hem.
    const looks = 7 + 2 * 5 + 2 * 1;
    expect(costOf(both, fit)).toBeCloseTo(looks + 2 + 13 + 2 * 13, 9);
  });

  test("goes by the look that is told, where a placement began with another one", () => {
    // As where the rest of a piece is fitted anew: what is knitted already costs nothing.
    const begun = lookWith(garment.motifs[0]!, { interval: 4, spread: 9 }, [
      { ...stretch(3, 4, 3), ease: 0.1 },
    ]);
    const fit = withPlacement({ sections: [section(begun, 2), section(look, 3)] });
    expect(costOf(garment, fit)).toBe(0);
  });

  test("costs nothing by what has no preference", () => {
    const free = written({ cord: { ...swing, ease: { from: "-20 %", to: "20 %" } } }, [{}], { weights });
    const motif = { ...free.motifs[0]!, ease: { from: -0.2, to: 0.2 } } as FittedLook["motif"];
    const other = lookWith(motif, { interval: 4, spread: 9 }, [{ ...stretch(3, 3, 3), ease: 0.1 }]);
    const fit = fitOf(free, [placed([section(other, 7)], { columns: 2, gap: 9 })], []);
    expect(costOf(free, fit)).toBe(0);
  });

  test("goes by a weight of the file only, whatever else a name may stand for", () => {
    const named = { ...preferring.quantities, toString: { unit: "needles", allow: "1..9", prefer: 1 } };
    const odd = written({ cord: { ...preferring, quantities: named } }, [place], { weights });
    const other = lookWith(odd.motifs[0]!, { interval: 3, spread: 2, toString: 4 }, [stretch(3, 3, 3)]);
    const fit = fitOf(odd, [placed([section(other, 5)])], []);
    expect(costOf({ ...odd, weights: { ...weights } }, fit)).toBe(3);
  });
});

describe("the independent sum for a motif that grows", () => {
  test("is the mean over all repeats, of ease and of what changes", () => {
    const { quantities } = preferring;
    const growing = written(
      { cord: { ...preferring, quantities: { ...quantities, spread: { ...quantities.spread, change: 1 } } } },
      [place],
      { weights },
    );
    const [motif] = growing.motifs;
    const eased = (ease: number) => ({ ...stretch(3, 3, 3), ease });
    const look = (spread: number, ease: number) => lookWith(motif!, { interval: 4, spread }, [eased(ease)]);
    const sections = [
      section(look(2, 0.01), 1),
      section(look(3, 0.02), 3, [eased(0.08)]),
      section(look(4, 0.06), 1),
    ];
    const fit = fitOf(growing, [placed(sections)], []);
    // Five repeats with 2, 3, 3, 3 and 4 needles where 2 are preferred; the first of the second section is hung
    // from the one below, with 2 % and 8 %.
    const spread = (0 + 1 + 1 + 1 + 2) / 5;
    const ease = (1 + (2 + 8) / 2 + 2 + 2 + 6) / 5;
    expect(costOf(growing, fit)).toBeCloseTo(7 + 11 * spread + 5 * ease, 9);
    // Another motif's placement before it changes nothing of that.
    const other = { ...placed([section(look(9, 0.5), 5)]), motif: "other" };
    expect(costOf(growing, { ...fit, placements: [other, ...fit.placements] })).toBeCloseTo(
      7 + 11 * spread + 5 * ease,
      9,
    );
  });
});

describe("the independent sum of what is left over", () => {
  test("is in percent of each supply, and only where as little as can be is to be left", () => {
    const garment = written({ cord: preferring }, [place], { weights });
    const look = lookWith(garment.motifs[0]!, { interval: 3, spread: 2 }, [stretch(3, 3, 3)]);
    const part = { lastRow: 0, rows: 0, columns: [{ cord: 2 }] };
    const fit = fitOf(garment, [placed([section(look, 5)], { part })], []);
    // 1 + 10 * 3 cord stitches of 5 mm, whatever is worked in part: 155 mm of 200 mm, and of 310 mm.
    const cord = (amount: number): Supply => ({ of: "cord", unit: "m", amount, path: [] });
    const having = (leastWaste: boolean, ...supplies: readonly Supply[]): Garment => ({
      ...garment,
      onHand: { leastWaste, supplies },
    });
    expect(costOf(having(true, cord(0.2)), fit)).toBeCloseTo(23 * 22.5, 9);
    expect(costOf(having(true, cord(0.2), cord(0.31)), fit)).toBeCloseTo(23 * (22.5 + 50), 9);
    expect(costOf(having(false, cord(0.2)), fit)).toBe(0);
  });
});

test("a fit that was solved for costs what its terms and the engine say", async () => {
  const garment = written({ cord: preferring }, [place], { weights });
  const result = await fitHere(garment, { rivals: 0 });
  if (result.status !== "fits") throw new Error("it has to fit");
  const { fit } = result;
  expect(checkCost(garment, fit, fit.cost)).toEqual([]);
  expect(checkCost(garment, fit, fit.cost + 0.01)).toHaveLength(1);
});
