import type { GarmentFile } from "./garment-file.ts";
import { fraction, lengthMm } from "./referee/entries.ts";

/** What one stitch, one row and one cord stitch truly measure, in mm. */
export interface TrueGauge {
  readonly stitchMm: number;
  readonly rowMm: number;
  readonly cordMm: number;
}

/**
 * Gauges that the counts of a file leave possible: every corner first, then any in between.
 *
 * @param share of what is left open
 * @param random a number from 0 to 1, another one at each call
 */
export function gaugesWithin(
  { gauge: { ground, cord } }: Pick<GarmentFile, "gauge">,
  share: number,
  count: number,
  random: () => number,
): TrueGauge[] {
  const off = (counted: number, within: string | undefined): number =>
    share * (within === undefined ? 1 / 4 / counted : fraction(within));
  const at = (across: number, up: number, along: number): TrueGauge => ({
    stitchMm:
      lengthMm(ground.over) /
      (ground.stitches + across * ground.stitches * off(ground.stitches, ground.within)),
    rowMm: lengthMm(ground.over) / (ground.rows + up * ground.rows * off(ground.rows, ground.within)),
    cordMm: cord
      ? lengthMm(cord.over) / (cord.stitches + along * cord.stitches * off(cord.stitches, cord.within))
      : 0,
  });
  const ends = [-1, 1];
  const corners = ends.flatMap((x) => ends.flatMap((y) => ends.map((z) => at(x, y, z))));
  const anywhere = (): number => 2 * random() - 1;
  return [
    ...corners,
    ...Array.from({ length: count - corners.length }, () => at(anywhere(), anywhere(), anywhere())),
  ];
}

/** Numbers from 0 to 1 that are the same for the same seed (a linear congruential generator modulo 2^31 - 1). */
export function numbersFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
