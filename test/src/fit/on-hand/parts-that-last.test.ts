import { describe, expect, test } from "vitest";
import type { Fit } from "../../../../src/fit/fit.ts";
import { partsThatLast } from "../../../../src/fit/on-hand/parts-that-last.ts";
import type { OnHand } from "../../../../src/garment/garment.ts";
import { type Plaited, plaitedFit, usedIn } from "../../../support/plaited-fit.ts";

const metresOfCord = (amount: number): OnHand => ({
  supplies: [{ path: [], of: "cord", amount, unit: "m" }],
  leastWaste: false,
});

/** The fit without its unfinished repeats. */
const plain = (fit: Fit): Fit => ({
  ...fit,
  placements: fit.placements.map(({ part: _, ...placement }) => placement),
});

/** Which placements keep their unfinished repeat. */
function kept(onHand: OnHand | undefined, plaits: readonly Plaited[]): readonly boolean[] {
  const fit = plaitedFit(onHand, plaits);
  return partsThatLast(plain(fit), fit.placements).map(({ part }) => part !== undefined);
}

describe("an unfinished repeat", () => {
  /**
   * Two repeats take 2 x (1 + 8 + 4 x 12) = 114 cord stitches, with 15 % more 132 to make, 0.33 m; a crossing more of
   * both arms 138, 159 to make and 0.3975 m; two crossings more 162, 187 to make and 0.4675 m.
   */
  const small = { part: 1 };
  const large = { part: 2 };

  test("takes what the cords of the example say", () => {
    const { placements } = plaitedFit(undefined, [{}, small, large]);
    expect(placements.map(usedIn)).toEqual([114, 138, 162]);
  });

  test("is worked wherever there is one and all is on hand that it takes", () => {
    expect(kept(undefined, [small, {}, large])).toEqual([true, false, true]);
    expect(kept(metresOfCord(5), [small, {}, large])).toEqual([true, false, true]);
  });

  test("is worked only as far as the cord lasts", () => {
    expect(kept(metresOfCord(0.398), [small])).toEqual([true]);
    expect(kept(metresOfCord(0.397), [small])).toEqual([false]);
  });

  test("of a placement earlier in the file comes first", () => {
    // 0.33 and 0.33 m without; 0.0675 m more for a small part, 0.1375 m for a large one.
    expect(kept(metresOfCord(0.74), [small, small])).toEqual([true, false]);
    expect(kept(metresOfCord(0.8), [small, small])).toEqual([true, true]);
  });

  test("is left out where it takes too much, and a later one that takes less is worked", () => {
    expect(kept(metresOfCord(0.74), [large, small])).toEqual([false, true]);
  });
});
