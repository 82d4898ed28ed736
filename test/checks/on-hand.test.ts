import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { toProgram } from "../../solver/choice.ts";
import { highsEngine } from "../../solver/highs-engine.ts";
import { programToLpText } from "../../solver/lp-text.ts";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { prepareCord } from "../../src/cord/preparation.ts";
import { checkFit } from "../../src/fit/check.ts";
import { enumerate } from "../../src/fit/enumerate.ts";
import type { Fit } from "../../src/fit/fit.ts";
import { formulate } from "../../src/fit/formulate.ts";
import { createAnyFit } from "../../src/fit/refusal/any-fit.ts";
import type { FitResult } from "../../src/fit/solve.ts";
import type { Garment, Supply } from "../../src/garment/garment.ts";
import { needsOf, type SupplyNeed } from "../../src/on-hand/needs.ts";
import { solveTextWithGlpk } from "../solver/support/glpk-engine.ts";
import { exhaustiveOnHand } from "../support/exhaustive-on-hand.ts";
import type { GarmentFile, PieceEntry } from "../support/garment-file.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { knittedStitchesOf } from "../support/knitted-stitches.ts";
import { thrown } from "../support/random/dice.ts";
import { growingArbitrary } from "../support/random/growing.ts";
import { randomStocking, type Stocking, stockedGarment } from "../support/random/stocking.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { cheapestGrowth } from "../support/referee/growing.ts";
import { fitHere, garmentOf } from "../support/run-garment.ts";

/** Costs are sums of a few products; two ways of adding them differ by far less than this. */
const costTolerance = 1e-6;

/** Random garments each time, and more of them where EVENROW_LONG is set. */
const count = process.env.EVENROW_LONG ? 600 : 60;

interface Judged {
  readonly stocking: Stocking;
  readonly plain: GarmentFile;
  readonly garment: Garment;
  readonly result: FitResult;
  /** What the exhaustive search finds it to cost; undefined where it finds no fit. */
  readonly cost: number | undefined;
}

const judged: Judged[] = [];

/** So much on hand as the best fit takes where there is plenty of everything, or less, or more. */
async function withSupplies(plain: GarmentFile, stocking: Stocking): Promise<GarmentFile> {
  const plenty = stockedGarment(plain, { ...stocking, leastWaste: false, balls: 0 }, () => 90_000);
  const { leastWaste: _, ...onHand } = garmentOf(plenty).onHand!;
  const result = await fitHere(
    { ...garmentOf(plenty), onHand: { ...onHand, leastWaste: false } },
    { rivals: 0 },
  );
  const needs = result.status === "fits" ? needsOf(result.fit) : [];
  return stockedGarment(plain, stocking, (name) => {
    // Of what nothing is taken there is some all the same.
    const needed = needs.find(({ supply }) => supply.of === name)?.needed || 5;
    const stocked = stocking.supplies.find((one) => one.name === name)!.stocked;
    const decimals = name === "cord" ? 3 : 1;
    const told = (amount: number): number => Math.max(0.1, Number(amount.toFixed(decimals)));
    switch (stocked) {
      case "enough":
        return told(needed);
      case "just under":
        return told(needed - 10 ** -decimals);
      case "short":
        return told((needed * stocking.percent.short) / 100);
      case "plenty":
        return told((needed * stocking.percent.plenty) / 100);
    }
  });
}

const fits = () =>
  judged.flatMap(({ garment, plain, result, stocking }) =>
    result.status === "fits" ? [{ garment, plain, stocking, result }] : [],
  );

describe(`${count} random garments with cord and yarn at, under and over what they take`, () => {
  beforeAll(async () => {
    const garments = sampleGarments(count, 20261130, {
      sharedPieces: false,
      placements: [1, 3],
      motifs: 2,
      kinds: ["crossed cord", "crossed cord", "written cord", "sample", "cable"],
    });
    const stockings = fc.sample(thrown(randomStocking), { numRuns: count, seed: 20261130 });
    for (const [index, plain] of garments.entries()) {
      const stocking = stockings[index]!;
      const file = await withSupplies(plain, stocking);
      const garment = garmentOf(file);
      judged.push({
        stocking,
        plain: file,
        garment,
        result: await fitHere(garment, { rivals: 1 }),
        cost: exhaustiveOnHand(file, edgesOf(garment), knittedStitchesOf(garment)),
      });
    }
  });

  test("cost what an exhaustive search finds, and fit where it finds a fit", () => {
    for (const { plain, result, cost } of judged) {
      const told = result.status === "fits" ? result.fit.cost : undefined;
      const about = JSON.stringify(plain);
      if (cost === undefined || told === undefined) expect(told, about).toBe(cost);
      else expect(Math.abs(told - cost), about).toBeLessThan(costTolerance);
    }
    expect(fits().length).toBeGreaterThan(count / 2);
    expect(fits().length).toBeLessThan(count);
    expect(fits().filter(({ stocking }) => stocking.leastWaste).length).toBeGreaterThan(15);
  });

  test("never tell that more is needed than there is, and are proven", () => {
    for (const { result } of fits()) {
      expect(result.proven && result.rivalsProven).toBe(true);
      for (const one of [result.fit, ...result.rivals])
        for (const { supply, needed } of needsOf(one)) expect(needed).toBeLessThanOrEqual(supply.amount);
    }
  });

  test("are told to fit or not where costs are not looked at, too", async () => {
    for (const { garment, plain, cost } of judged) {
      const fits = await createAnyFit(garment, simplexEngine)(garment);
      expect(fits, JSON.stringify(plain)).toBe(cost !== undefined);
    }
  });

  test("reach the same optimum in HiGHS and GLPK from the text that model writes", async () => {
    for (const { garment, result } of fits().slice(0, 15)) {
      const { program } = toProgram(formulate(enumerate(garment)));
      const highs = await highsEngine(program, {});
      const glpk = await solveTextWithGlpk(programToLpText(program));
      for (const outcome of [highs, glpk]) {
        expect(outcome.status).toBe("optimal");
        if (outcome.status === "optimal")
          expect(Math.abs(outcome.cost - result.fit.cost)).toBeLessThan(costTolerance);
      }
    }
  });

  test("are refused by the check once less is on hand, or more is counted, than is told", () => {
    for (const { garment, result } of fits().slice(0, 40)) {
      const { fit } = result;
      expect(checkFit(garment, fit, fit.cost)).toEqual([]);
      for (const { supply, needed } of needsOf(fit)) {
        if (needed === 0) continue;
        const less = needed - (supply.of === "cord" ? 0.001 : 0.1);
        const scarce = withSupply(garment, { ...supply, amount: Number(less.toFixed(3)) });
        expect(rulesBroken(scarce, fit), JSON.stringify(supply)).toContain(`on hand: ${supply.of}`);
        const often = { ...garment, pieces: garment.pieces.map((piece) => ({ ...piece, make: 50 })) };
        expect(rulesBroken(often, fit)).toContain(`on hand: ${supply.of}`);
      }
    }
  });
});

const rulesBroken = (garment: Garment, fit: Fit): readonly string[] =>
  checkFit(garment, fit, fit.cost).map(({ rule }) => rule);

const withSupply = (garment: Garment, supply: Supply): Garment => ({
  ...garment,
  onHand: { leastWaste: false, supplies: [supply] },
});

describe("a growing motif", () => {
  // Counted as near to the preferred ease as can be, at every repeat.
  test("goes the way that an exhaustive search finds for what is on hand", async () => {
    const drawn = fc.sample(growingArbitrary(), { numRuns: 30, seed: 20261130 });
    let [fitted, dearer] = [0, 0];
    for (const [index, { garment: plain, motif }] of drawn.entries()) {
      const free = await fitHere(garmentOf(plain), { rivals: 0 });
      if (free.status !== "fits") continue;
      const stitches = prepareCord(free.fit, free.fit.placements[0]!)!.make;
      const { cord } = plain.gauge;
      const stitchMm = 100 / cord!.stitches;
      const onHandMm = Math.floor((stitches - [0, 1, 4, -15][index % 4]!) * stitchMm + 1);
      const leastWaste = index % 3 === 0;
      const file = {
        ...plain,
        "on hand": { cord: `${onHandMm} mm`, ...(leastWaste && { prefer: "least waste" }) },
      };
      const garment = garmentOf(file);
      const cost = cheapestGrowth(plain, motif, edgesOf(garment), (used) => {
        const mm = Math.ceil((used * 115) / 100) * stitchMm;
        if (mm > onHandMm + 1e-6) return undefined;
        return leastWaste ? 0.1 * 100 * (1 - mm / onHandMm) : 0;
      });
      const result = await fitHere(garment, { rivals: 1 });
      const told = result.status === "fits" ? result.fit.cost : undefined;
      if (cost === undefined || told === undefined) expect(told, JSON.stringify(file)).toBe(cost);
      else expect(Math.abs(told - cost), JSON.stringify(file)).toBeLessThan(costTolerance);
      if (told === undefined) continue;
      fitted++;
      if (told > free.fit.cost + costTolerance && !leastWaste) dearer++;
    }
    expect(fitted).toBeGreaterThan(12);
    expect(dearer).toBeGreaterThan(3);
  });
});

describe("two fields of one tapering piece", () => {
  const stacked = (onHand: object, outline: PieceEntry["outline"]): GarmentFile => ({
    format: "evenrow/1",
    bed: { needles: 150 },
    gauge: {
      ground: { stitches: 22, rows: 31, over: "10 cm" },
      cord: { needles: 3, stitches: 19, over: "10 cm" },
    },
    yarn: { ground: { tex: 370 }, cord: { tex: 370 } },
    "on hand": onHand,
    pieces: {
      panel: {
        make: 2,
        outline,
        marks: { waist: "10 cm" },
        grow: "12 mm",
        shrink: "9 mm",
      },
    },
    motifs: {
      plait: {
        like: "crossed cord",
        interval: { allow: [3, 4], prefer: 4 },
        spread: { allow: [2, 3], prefer: 3 },
      },
    },
    place: [
      { motif: "plait", on: "panel", from: "cast-on", to: "waist", margins: { bottom: "2..6", top: "2..6" } },
      {
        motif: "plait",
        on: "panel",
        from: "waist",
        to: "bind-off",
        margins: { bottom: "2..6", top: "2..6" },
      },
    ],
  });

  test.each<[shape: string, isSum: boolean, ...widths: [height: string, width: string][]]>([
    ["straight above and below the waist", true, ["0 cm", "20 cm"], ["10 cm", "20 cm"], ["21 cm", "26 cm"]],
    ["all one taper", false, ["0 cm", "18 cm"], ["21 cm", "27 cm"]],
    [
      "a step, then narrower",
      false,
      ["0 cm", "20 cm"],
      ["15 cm", "26 cm"],
      ["15 cm", "24 cm"],
      ["21 cm", "20 cm"],
    ],
  ])("change their lengths together as an exhaustive search finds: %s", async (_, isSum, ...widths) => {
    const taper = widths.map(([height, width]) => ({ height, width }));
    let fitted = 0;
    const plenty = await fitHere(garmentOf(stacked({ "ground yarn": "900 g", cord: "90 m" }, taper)), {
      rivals: 0,
    });
    if (plenty.status !== "fits") throw new Error("nothing fits");
    const [cord, ground] = needsOf(plenty.fit) as [SupplyNeed, SupplyNeed];
    for (const less of [0, 0.1, 0.5, 1, 1.4]) {
      const file = stacked(
        {
          "ground yarn": `${Number((ground.needed - less).toFixed(1))} g`,
          cord: `${Number((cord.needed - 0.001 * (less > 0.7 ? 1 : 0)).toFixed(3))} m`,
          ...(less === 0.5 && { prefer: "least waste" }),
        },
        taper,
      );
      const garment = garmentOf(file);
      const isInVariants = enumerate(garment)
        .layouts.flat()
        .some(({ variant }) => variant !== undefined);
      expect(isInVariants).toBe(!isSum);
      const cost = exhaustiveOnHand(file, edgesOf(garment), knittedStitchesOf(garment));
      const result = await fitHere(garment, { rivals: 1 });
      const told = result.status === "fits" ? result.fit.cost : undefined;
      if (cost === undefined || told === undefined) expect(told, JSON.stringify(file)).toBe(cost);
      else expect(Math.abs(told - cost), JSON.stringify(file)).toBeLessThan(costTolerance);
      if (told !== undefined) fitted++;
    }
    expect(fitted).toBeGreaterThan(1);
  });
});
