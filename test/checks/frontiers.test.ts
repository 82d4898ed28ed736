import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { toProgram } from "../../solver/choice.ts";
import { highsEngine } from "../../solver/highs-engine.ts";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { type Choices, formulate, type Limit } from "../../src/fit/formulate.ts";
import { prepare } from "../../src/fit/prepare.ts";
import type { Garment } from "../../src/garment/garment.ts";
import { inGrains, measuresOf } from "../../src/tradeoff/measured.ts";
import { type TradeOff, type TradePoint, tradeOff } from "../../src/tradeoff/trade.ts";
import { type TradeTerm, tradeTerms } from "../../src/tradeoff/trade-term.ts";
import { exhaustiveFrontier } from "../support/exhaustive-frontier.ts";
import type { GarmentFile } from "../support/garment-file.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { growingArbitrary } from "../support/random/growing.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { cheapestGrowth } from "../support/referee/growing.ts";
import { fitHere, garmentOf } from "../support/run-garment.ts";

/** Two ways of adding up a few products differ by far less. */
const costTolerance = 1e-6;

interface Drawn {
  readonly plain: GarmentFile;
  readonly garment: Garment;
  readonly terms: readonly TradeTerm[];
}

/** Garments with two or three terms of each by turns, so that every pair and every three come up. */
function drawn(count: number, seed: number, wishes: Parameters<typeof sampleGarments>[2]): readonly Drawn[] {
  return sampleGarments(count, seed, wishes).flatMap((plain, index) => {
    const garment = garmentOf(plain);
    const able = tradeTerms(garment).filter(({ nothing }) => nothing === undefined);
    const first = index % able.length;
    const terms = [...able.slice(first), ...able.slice(0, first)].filter((_, at) =>
      [0, 1 + (index % 2), 3].slice(0, 2 + (Math.floor(index / 2) % 2)).includes(at),
    );
    return terms.length < 2 ? [] : [{ plain, garment, terms }];
  });
}

async function traded({ garment, terms }: Drawn, work?: number): Promise<TradeOff | undefined> {
  const ask = { terms, held: [] };
  const result = await tradeOff(garment, ask, simplexEngine, work === undefined ? {} : { work });
  expect(result.status).not.toBe("stopped");
  if (result.status !== "traded") return undefined;
  expect(result.complete).toBe(true);
  return result;
}

/** Amounts of a point in thousandths, each look's and placement's rounded by itself, as they are told apart. */
function inThousandths({ fit }: TradePoint, terms: readonly TradeTerm[]): readonly number[] {
  const named = terms.map(({ name }) => name);
  const owners = new Map<string, typeof fit.terms>();
  for (const term of fit.terms) {
    const owner = term.placement === undefined ? `look of ${term.motif}` : `placement ${term.placement}`;
    owners.set(owner, [...(owners.get(owner) ?? []), term]);
  }
  return terms.map(({ name, unit }) =>
    [...owners.values()].reduce(
      (sum, ofOwner) =>
        sum +
        inGrains(
          ofOwner.reduce(
            (part, { term, amount, cost }) =>
              part + (unit === undefined ? (named.includes(term) ? 0 : cost) : term === name ? amount : 0),
            0,
          ),
        ),
      0,
    ),
  );
}

describe("frontiers of random garments", () => {
  const count = 120;
  const many = drawn(count, 20261201, { sharedPieces: false, phases: true, placements: [1, 3] });

  test("are what trying every fit finds: the same amounts, at the same least cost", async () => {
    let [fitting, points, threes] = [0, 0, 0];
    for (const one of many) {
      const about = `${one.terms.map(({ name }) => name).join(" against ")}: ${JSON.stringify(one.plain)}`;
      const found = await traded(one);
      const tried = exhaustiveFrontier(
        one.plain,
        one.terms.map(({ name }) => name),
        edgesOf(one.garment),
      );
      const told = found?.points.map((point) => inThousandths(point, one.terms).join()) ?? [];
      expect([...told].sort(), about).toEqual(tried.map(({ amounts }) => amounts.join()).sort());
      for (const [index, point] of (found?.points ?? []).entries()) {
        const { cost } = tried.find(({ amounts }) => amounts.join() === told[index])!;
        expect(Math.abs(point.fit.cost - cost), about).toBeLessThan(costTolerance);
      }
      if (found) fitting += 1;
      points += told.length;
      if (one.terms.length === 3 && told.length > 2) threes += 1;
    }
    // Most have a fit, and enough of them something to trade, or the comparison would say little.
    expect(fitting).toBeGreaterThan(count / 2);
    expect(points).toBeGreaterThan(1.8 * fitting);
    expect(threes).toBeGreaterThan(10);
  });

  test("are those among the fits that give up no more of a term that is held than the best fit", async () => {
    let [compared, narrower] = [0, 0];
    for (const { plain, garment, terms } of many) {
      // What the rest is hangs on what is named, and the referee names all three.
      if (terms.length < 3 || terms.some(({ unit }) => unit === undefined)) continue;
      const tried = exhaustiveFrontier(
        plain,
        terms.map(({ name }) => name),
        edgesOf(garment),
      );
      for (const [at, held] of terms.entries()) {
        const others = terms.filter((term) => term !== held);
        const result = await tradeOff(garment, { terms: others, held: [held] }, simplexEngine);
        if (result.status !== "traded") continue;
        compared += 1;
        const most = inThousandths(result.best, [held])[0]!;
        const kept = tried
          .filter(({ amounts }) => amounts[at]! <= most)
          .map(({ amounts }) => amounts.filter((_, index) => index !== at));
        const least = kept.filter(
          ([a, b]) => !kept.some(([c, d]) => c! <= a! && d! <= b! && (c! < a! || d! < b!)),
        );
        expect(result.points.map((point) => inThousandths(point, others).join()).sort()).toEqual(
          [...new Set(least.map((amounts) => amounts.join()))].sort(),
        );
        if (kept.length < tried.length) narrower += 1;
      }
    }
    expect(compared).toBeGreaterThan(30);
    expect(narrower).toBeGreaterThan(4);
  });

  test("are the same where an engine searches them zone by zone", async () => {
    for (const one of many.slice(0, 15)) {
      const [settled, searched] = [await traded(one), await traded(one, 0)];
      expect(searched?.points.map(({ amounts }) => amounts)).toEqual(
        settled?.points.map(({ amounts }) => amounts),
      );
    }
  });
});

describe("every point, against HiGHS on the program with two limits", () => {
  /** The least cost of a fit with no more than so much of each, in thousandths; undefined where there is none. */
  async function leastCost(choices: Choices, most: readonly number[]): Promise<number | undefined> {
    const limits = most.map(
      (bound, measure): Limit => ({ name: `most ${measure}`, relation: "<=", bound, measure }),
    );
    const { program } = toProgram(formulate(choices, undefined, limits));
    const outcome = await highsEngine(program);
    if (outcome.status === "infeasible") return undefined;
    expect(outcome.status).toBe("optimal");
    return outcome.status === "optimal" ? outcome.cost : undefined;
  }

  test("is the cheapest with its amounts, and nothing lies between it and the next", async () => {
    let [garments, points] = [0, 0];
    // Pieces that carry two motifs are among them, whose layouts hang together by more than their look.
    const candidates = drawn(120, 20261202, {}).flatMap((one) => {
      const rest = tradeTerms(one.garment).at(-1)!;
      return one.terms.includes(rest) ? [] : [{ ...one, terms: [one.terms[0]!, rest] }];
    });
    for (const one of candidates) {
      if (garments === 20) break;
      const found = await traded(one);
      if (!found || found.points.length < 2) continue;
      garments += 1;
      const named = new Set(one.terms.map(({ name }) => name));
      const { choices } = prepare(one.garment, { fits: 1, measures: measuresOf(one.terms, named) })!;
      const amounts = found.points.map((point) => inThousandths(point, one.terms) as [number, number]);
      const wide = 1e6;
      for (const [index, [first, second]] of amounts.entries()) {
        points += 1;
        const about = `${[...named].join(" against ")}: ${JSON.stringify(one.plain)}`;
        const cost = await leastCost(choices, [first, second]);
        expect(Math.abs(cost! - found.points[index]!.fit.cost), about).toBeLessThan(costTolerance);
        const [, before] = amounts[index - 1] ?? [0, wide];
        expect(await leastCost(choices, [first - 1, before - 1]), about).toBeUndefined();
      }
      expect(await leastCost(choices, [wide, amounts.at(-1)![1] - 1])).toBeUndefined();
    }
    expect([garments, points > 50]).toEqual([20, true]);
  });
});

describe("frontiers of a motif that grows", () => {
  test("have among them what is cheapest by any weights, as trying every way through the spreads finds it", async () => {
    const weights = fc.record({
      ease: fc.integer({ min: 1, max: 30 }),
      spread: fc.integer({ min: 1, max: 30 }),
    });
    let compared = 0;
    for (const [index, { garment: plain, motif }] of fc
      .sample(growingArbitrary(), { numRuns: 16, seed: 20261203 })
      .entries()) {
      const garment = garmentOf(plain);
      const terms = ["ease", "spread", "rest"].map(
        (name) => tradeTerms(garment).find((term) => term.name === name)!,
      );
      const found = await traded({ plain, garment, terms });
      for (const { ease, spread } of fc.sample(weights, { numRuns: 3, seed: index })) {
        const weighed = { ...plain, weights: { ...plain.weights, ease: ease / 10, spread: spread / 10 } };
        const least = cheapestGrowth(weighed, motif, edgesOf(garment));
        expect(found === undefined).toBe(least === undefined);
        if (!found) continue;
        compared += 1;
        const told = found.points.map(
          ({ amounts: [off, away, rest] }) => (ease / 10) * off! + (spread / 10) * away! + rest!,
        );
        // A point that is cheaper by less than the grain may have been taken for no better.
        expect(Math.abs(Math.min(...told) - least!)).toBeLessThan(0.01);
      }
    }
    expect(compared).toBeGreaterThan(25);
  });
});

test("frontiers of what is left over have among them what is cheapest however it weighs", async () => {
  let [compared, trading] = [0, 0];
  for (const plain of sampleGarments(9, 20261204, { sharedPieces: false, placements: [1, 2] })) {
    const stocked = (waste: number): GarmentFile => ({
      ...plain,
      "on hand": { cord: "20 m", prefer: "least waste" },
      weights: { ...plain.weights, waste },
    });
    const garment = garmentOf(stocked(0.1));
    const terms = ["waste", "rest"].map((name) => tradeTerms(garment).find((term) => term.name === name)!);
    const found = await traded({ plain, garment, terms });
    for (const waste of [0.03, 1]) {
      const result = await fitHere(garmentOf(stocked(waste)), { rivals: 0 });
      expect(result.status === "fits").toBe(found !== undefined);
      if (!found || result.status !== "fits") continue;
      compared += 1;
      const told = found.points.map(({ amounts: [left, rest] }) => waste * left! + rest!);
      // A point that is cheaper by less than the grain may have been taken for no better.
      expect(Math.abs(Math.min(...told) - result.fit.cost)).toBeLessThan(0.002 * (1 + waste));
    }
    if (found && found.points.length > 1) trading += 1;
  }
  expect(compared).toBeGreaterThan(8);
  expect(trading).toBeGreaterThan(3);
});
