import { beforeAll, describe, expect, test } from "vitest";
import { stringify } from "yaml";
import { toProgram } from "../../solver/choice.ts";
import { highsEngine } from "../../solver/highs-engine.ts";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import type { SizeRange } from "../../src/garment/garment.ts";
import { readGarment } from "../../src/garment/read-garment.ts";
import { fitRange } from "../../src/grading/fit-range.ts";
import { fitSize } from "../../src/grading/fit-size.ts";
import { joinRange } from "../../src/grading/prepare-range.ts";
import type { RangeFits, RangeResult } from "../../src/grading/range-result.ts";
import { leastByLook } from "../support/exhaustive-by-look.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { type RangeFile, type Sharing, sampleRanges, sizeOf } from "../support/random-range.ts";
import type { Look } from "../support/referee/looks.ts";

/** Costs are sums of a few products; two ways of adding them differ by far less than this. */
const costTolerance = 1e-6;

const kinds: readonly Sharing[] = ["all", "quantities", "counts"];
const each = 34;

interface Judged {
  readonly plain: RangeFile;
  readonly range: SizeRange;
  /** How many rivals were asked for. */
  readonly wanted: number;
  readonly result: RangeResult;
  /** By motif and, in the order of the sizes, for each shared look the least that it costs there. */
  readonly costs: readonly (readonly ReadonlyMap<string, number>[])[];
}

const judged: Judged[] = [];

beforeAll(async () => {
  for (const [index, sharing] of kinds.entries())
    for (const [at, plain] of sampleRanges(each, 20270301 + index, sharing).entries()) {
      // Where no rivals are asked for, no more looks are kept than the best fit needs.
      const wanted = at % 2 === 0 ? 2 : 0;
      const { range, diagnostics } = readGarment(stringify(plain), "test.yaml");
      if (!range) throw new Error(JSON.stringify(diagnostics));
      judged.push({
        plain,
        range,
        wanted,
        result: await fitRange(range, simplexEngine, { rivals: wanted }),
        costs: costsOf(plain, range, sharing),
      });
    }
});

function costsOf(plain: RangeFile, range: SizeRange, sharing: Sharing): Judged["costs"] {
  const placed = new Set(plain.place.map(({ motif }) => motif));
  return [...placed].map((motif) =>
    range.sizes.map(({ name, garment }) => {
      const keyOf = (look: Look) => sharedKey(plain.share, sharing, look);
      const least = leastByLook(sizeOf(plain, name), motif, edgesOf(garment), keyOf);
      return new Map([...least].map(([key, { cost }]) => [key, cost]));
    }),
  );
}

/** The referee's own reading of what is shared. The two stretches of a crossed cord keep their order in every look. */
const sharedKey = (share: readonly string[], sharing: Sharing, { quantities, segments }: Look): string =>
  JSON.stringify([
    share.map((name) => quantities[name]),
    sharing === "all" && segments.map(({ needles, rows, pickup }) => [needles, rows, pickup]),
    sharing === "counts" && segments.map(({ pickup }) => pickup),
  ]);

/** The sums of one motif over some of the sizes, for every look that all of these can have, in rising order. */
function sumsOver(
  costs: readonly ReadonlyMap<string, number>[],
  sizes: readonly number[],
): readonly number[] {
  const some = sizes.map((size) => costs[size]!);
  const keys = [...(some[0]?.keys() ?? [])].filter((key) => some.every((least) => least.has(key)));
  return keys.map((key) => some.reduce((sum, least) => sum + least.get(key)!, 0)).sort((a, b) => a - b);
}

/** What all motifs together cost some of the sizes at least, sharing; undefined where they cannot. */
function leastFor({ costs }: Judged, sizes: readonly number[]): number | undefined {
  if (sizes.length === 0) return 0;
  const sums = costs.map((ofMotif) => sumsOver(ofMotif, sizes)[0]);
  return sums.reduce((total, sum) => (total === undefined || sum === undefined ? undefined : total + sum), 0);
}

const sizesOf = ({ range }: Judged): number[] => range.sizes.map((_, index) => index);

const fitting = (): (Judged & { result: RangeFits })[] =>
  judged.filter((one): one is Judged & { result: RangeFits } => one.result.status === "fits");

describe(`${kinds.length * each} random ranges of sizes`, () => {
  test("cost what an exhaustive search over looks and sizes finds, and fit where it finds a fit", () => {
    for (const one of judged) {
      const least = leastFor(one, sizesOf(one));
      const about = JSON.stringify(one.plain);
      if (one.result.status !== "fits" || least === undefined) {
        expect(one.result.status, about).toBe("does not fit");
        expect(least, about).toBeUndefined();
      } else expect(Math.abs(one.result.cost - least), about).toBeLessThan(costTolerance);
    }
    for (const sharing of [0, 1, 2]) {
      const some = judged.slice(sharing * each, (sharing + 1) * each);
      const fit = some.filter(({ result }) => result.status === "fits").length;
      // Most have a fit and some have none, or the comparison would say little.
      expect(fit).toBeGreaterThan(each / 3);
      expect(fit).toBeLessThan(each);
    }
  });

  test("are proven at the root, however much is shared", () => {
    for (const { result } of fitting()) {
      expect(result.proven).toBe(true);
      expect(result.bestNodes).toBeLessThanOrEqual(1);
    }
  });

  test("tell what each size costs by itself and what dropping it would gain", () => {
    let gaining = 0;
    for (const one of fitting()) {
      const { sizes, dropping, cost } = one.result;
      sizes.forEach(({ alone }, index) => {
        expect(Math.abs(alone!.cost - leastFor(one, [index])!)).toBeLessThan(costTolerance);
        const others = sizesOf(one).filter((other) => other !== index);
        const gain = cost - leastFor(one, others)! - leastFor(one, [index])!;
        expect(dropping[index]).toMatchObject({ size: sizes[index]!.name, proven: true });
        expect(Math.abs(dropping[index]!.gain - gain)).toBeLessThan(2 * costTolerance);
        if (gain > costTolerance) gaining++;
      });
    }
    expect(gaining).toBeGreaterThan(10);
  });

  test("tell which sizes do not fit by themselves, and which keep the others from sharing", () => {
    const apart = { misfits: 0, freeing: 0 };
    for (const one of judged) {
      const { result, range } = one;
      if (result.status !== "does not fit") continue;
      const named = (indexes: readonly number[]) => indexes.map((index) => range.sizes[index]!.name);
      const misfits = sizesOf(one).filter((size) => leastFor(one, [size]) === undefined);
      expect(result.misfits).toEqual(named(misfits));
      if (misfits.length > 0) apart.misfits++;
      else {
        apart.freeing++;
        const without = (size: number) => sizesOf(one).filter((other) => other !== size);
        const freeing = sizesOf(one).filter((size) => leastFor(one, without(size)) !== undefined);
        expect(result.freeing).toEqual(named(freeing));
      }
    }
    expect(apart.misfits).toBeGreaterThan(3);
    expect(apart.freeing).toBeGreaterThan(0);
  });

  test("have the next best looks for rivals, where there is one motif", () => {
    let compared = 0;
    for (const one of fitting()) {
      if (one.costs.length > 1) continue;
      const sums = sumsOver(one.costs[0]!, sizesOf(one));
      const told = [one.result.cost, ...one.result.rivals.map(({ cost }) => cost)];
      expect(told).toHaveLength(Math.min(1 + one.wanted, sums.length));
      told.forEach((cost, index) => {
        expect(Math.abs(cost - sums[index]!)).toBeLessThan(2 * costTolerance);
      });
      compared++;
    }
    expect(compared).toBeGreaterThan(15);
  });

  test("give each size the fit that it has among all", async () => {
    for (const { range, result } of fitting().filter((_, index) => index % 4 === 0))
      for (const { name, fit } of result.sizes) {
        const alone = await fitSize(range, name, simplexEngine, { rivals: 1 });
        if (alone.status !== "fits") expect.fail(`${name} ${alone.status}`);
        expect(alone.fit.placements).toEqual(fit.placements);
        expect(alone.fit.cost).toBeCloseTo(fit.cost, 6);
        for (const rival of alone.rivals) expect(rival.cost).toBeGreaterThan(fit.cost - costTolerance);
      }
  });

  test("reach the same optimum in HiGHS, from the program that model writes", async () => {
    for (const { range, result } of fitting().filter((_, index) => index % 3 === 0)) {
      const highs = await highsEngine(toProgram(joinRange(range)).program, {});
      if (highs.status !== "optimal") expect.fail(highs.status);
      expect(Math.abs(highs.cost - result.cost)).toBeLessThan(costTolerance);
    }
  });
});
