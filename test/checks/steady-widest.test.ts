import { beforeAll, describe, expect, test } from "vitest";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { slackAsFitted, slackOf } from "../../src/steady/slack.ts";
import { steadyOver, type Widest, widestSteady } from "../../src/steady/widest.ts";
import { exhaustiveBest } from "../support/exhaustive.ts";
import type { GarmentFile } from "../support/garment-file.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { fitHere, garmentOf } from "../support/run-garment.ts";

/** What the tolerances of ease and rows can move a threshold by, and more. */
const near = 5e-6;

const wanted = 40;
const always = () => Number.POSITIVE_INFINITY;

interface Sought {
  readonly plain: GarmentFile;
  readonly widest: Widest;
  /** Whether something fits that holds over a share, by an exhaustive search. */
  readonly fitsOver: (share: number) => boolean;
}

const sought: Sought[] = [];

beforeAll(async () => {
  for (const plain of sampleGarments(260, 20261202, {
    steady: true,
    placements: [1, 2],
    sharedPieces: false,
  })) {
    if (sought.length === wanted) break;
    // The whole range is what is asked for, however little of it the file asks.
    const garment = { ...garmentOf(plain), steady: 1 };
    const { steady: _, ...bold } = garment;
    if ((await fitHere(bold, { rivals: 0 })).status !== "fits") continue;
    if ((await fitHere(garment, { rivals: 0 })).status === "fits") continue;
    const edges = edgesOf(bold);
    sought.push({
      plain,
      widest: await widestSteady(garment, simplexEngine, 1, always),
      fitsOver: (share) => exhaustiveBest({ ...plain, steady: `${100 * share} %` }, { edges }) !== undefined,
    });
  }
});

describe("the widest range over which something is steady", () => {
  test("is found exactly: something fits up to it, and nothing beyond", () => {
    expect(sought.length).toBe(wanted);
    let some = 0;
    for (const { plain, widest, fitsOver } of sought) {
      const about = JSON.stringify([widest, plain]);
      expect(widest.exact, about).toBe(true);
      if (widest.share === undefined) {
        expect(fitsOver(0), about).toBe(false);
        continue;
      }
      some++;
      expect(fitsOver(Math.max(0, widest.share - near)), about).toBe(true);
      expect(fitsOver(widest.share + near), about).toBe(false);
    }
    expect(some).toBeGreaterThan(wanted / 2);
  });

  test("is what halving comes to with an exhaustive search", () => {
    for (const { widest, fitsOver } of sought
      .filter(({ widest: { share } }) => share !== undefined)
      .slice(0, 6)) {
      let [held, none] = [0, 1];
      while (none - held > 1e-5) {
        const middle = (held + none) / 2;
        if (fitsOver(middle)) held = middle;
        else none = middle;
      }
      expect(widest.share).toBeGreaterThan(held - near);
      expect(widest.share).toBeLessThan(none + near);
    }
  });

  test("is told by a fit that holds over it, and is not found without time", async () => {
    const { plain, widest } = sought.find(({ widest: { share } }) => (share ?? 0) > 0.1)!;
    const garment = { ...garmentOf(plain), steady: 1 };
    const best = await steadyOver(garment, simplexEngine, widest.share!, { timeLimitMs: 60_000 });
    expect(best.status).toBe("fits");
    if (best.status !== "fits") return;
    expect(slackAsFitted(best.fit)).toBeGreaterThanOrEqual(widest.share! - 1e-9);
    expect(slackOf(best.fit)).toBeGreaterThanOrEqual(slackAsFitted(best.fit));
    expect(await widestSteady(garment, simplexEngine, 1, () => 0)).toEqual({ noneFrom: 1, exact: false });
  });
});
