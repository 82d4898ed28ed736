import { beforeAll, expect, test } from "vitest";
import { cordsOf } from "../../../../src/cord/cord.ts";
import type { FittedSection } from "../../../../src/fit/fit.ts";
import { cordOfSteps } from "../../../../src/fit/growth/cord-of-steps.ts";
import type { Track } from "../../../../src/fit/growth/tracks.ts";
import { wedge } from "../../../support/growing-wedge.ts";

let track: Track;
beforeAll(() => {
  [track] = wedge().tracks as [Track];
});

/** The sections of a way through the looks of the track, one for each repeat. */
const sectionsOf = (path: readonly number[]): readonly FittedSection[] =>
  path.map((to, repeat) => {
    const [look, before] = [track.looks[to]!, track.looks[path[repeat - 1] ?? to]!];
    return { look, repeats: 1, joins: track.stepTo(look, before)!.joins };
  });

test.each([[[2]], [[0, 0, 0]], [[0, 1, 2]], [[3, 2, 2, 1, 2]]])(
  "the steps of the way %s take together what its cord takes from end to end",
  (path) => {
    const cordOf = cordOfSteps(track);
    const steps = path.map((to, repeat) => cordOf(repeat, to, path[repeat - 1] ?? to));
    const together = steps.reduce((sum, step) => sum.map((stitches, cord) => stitches + step[cord]!));
    expect(together).toEqual(cordsOf(sectionsOf(path)).map(({ used }) => used));
  },
);

test("the first repeat takes the hung ends, the lead-in and the repeat of both arms", () => {
  // Spread 3 at interval 4 counts 8 over the lead-in and 12 over a crossing; each arm has one of the one and two of the other.
  expect(cordOfSteps(track)(0, 0, 0)).toEqual([2 * (1 + 8 + 12 + 12)]);
  expect(cordOfSteps(track)(1, 0, 0)).toEqual([2 * (12 + 12)]);
  // Coming from 3 to 4 over the join, 14, and on with a crossing of 4, 16.
  expect(cordOfSteps(track)(1, 1, 0)).toEqual([2 * (14 + 16)]);
});

test("what a step takes is worked out once", () => {
  const cordOf = cordOfSteps(track);
  const once = cordOf(2, 1, 0);
  expect(cordOf(2, 1, 0)).toBe(once);
  for (const [repeat, to, from] of [
    [1, 1, 0],
    [2, 0, 0],
    [2, 1, 1],
  ] as const)
    expect(cordOf(repeat, to, from)).not.toBe(once);
});
