import { describe, expect, test } from "vitest";
import { cordsOf } from "../../../../src/cord/cord.ts";
import { distinctPasses, stitchesOver, usageOf, usageText } from "../../../../src/fit/on-hand/cord-usage.ts";
import { distinctSegments } from "../../../../src/motif/segments.ts";
import type { Point, StrandTrace, Trace } from "../../../../src/motif/trace.ts";

const at = (needle: number, row: number, count?: number): Point => ({
  needle,
  row,
  rank: 0,
  ...(count !== undefined && { count }),
});

const traced = (strands: readonly StrandTrace[], folded: Trace["folded"] = [], leadRows = 0): Trace => ({
  leadRows,
  repeatRows: 8,
  reach: { left: 4, right: 4 },
  strands,
  folded,
  cables: [],
  ladders: [],
});

const arm = (name: string, side: 1 | -1): StrandTrace => ({
  name,
  start: at(side, 0),
  leadIn: [at(3 * side, 4)],
  repeat: [at(-3 * side, 4), at(3 * side, 8)],
});

/** Two arms of one cord: a lead-in each, then two crossings in every repeat. */
const plait = traced([arm("left", -1), arm("right", 1)], [["left", "right"]], 4);

/** The same arms and a cord between them that runs straight up. */
const withMiddle = traced(
  [...plait.strands, { name: "middle", start: at(1, 0), leadIn: [at(1, 4)], repeat: [at(1, 8)] }],
  plait.folded,
  4,
);

/** Two cords that change places: the one of them crosses, 6 needles, while the other runs straight up. */
const swapping = traced([
  { name: "one", start: at(-3, 0), leadIn: [], repeat: [at(3, 8)], next: "other" },
  { name: "other", start: at(3, 0), leadIn: [], repeat: [at(3, 4), at(-3, 8)], next: "one" },
]);

/** A cord that stands off in a loop of 10 cord stitches and lies over the same needles without one. */
const looped = traced([
  { name: "cord", start: at(1, 0), leadIn: [], repeat: [at(-1, 2, 10), at(1, 4), at(-1, 6), at(1, 8)] },
]);

describe("how often a cord passes over each stretch", () => {
  test("is told before the repeats and for each of them, both arms of a folded cord together", () => {
    expect(distinctSegments(plait).map(({ name }) => name)).toEqual(["lead-in", "crossing"]);
    // After as many repeats as there are strands and one more it comes round again.
    expect(usageOf(plait)).toEqual([
      {
        strands: 2,
        passes: [
          [2, 0],
          [0, 4],
          [0, 4],
          [0, 4],
        ],
      },
    ]);
  });

  test("is told of a folded cord first, then of each other one by itself", () => {
    const [folded, single] = usageOf(withMiddle);
    expect(usageOf(withMiddle)).toHaveLength(2);
    expect([folded!.strands, single!.strands]).toEqual([2, 1]);
    // Stretches of 2 x 4, 5 x 4, 0 x 4 (the middle's lead-in) and 0 x 8.
    expect(folded!.passes.slice(0, 2)).toEqual([
      [2, 0, 0, 0],
      [0, 4, 0, 0],
    ]);
    expect(single!.passes.slice(0, 2)).toEqual([
      [0, 0, 1, 0],
      [0, 0, 0, 1],
    ]);
  });

  test("follows a strand that goes on in another's place", () => {
    const [one, other] = usageOf(swapping);
    // Stretches of 5 x 8, 0 x 4 and 5 x 4; the strand that crossed at once first stands still in the next repeat.
    expect(one!.passes).toEqual([
      [0, 0, 0],
      [1, 0, 0],
      [0, 1, 1],
      [1, 0, 0],
    ]);
    expect(other!.passes).toEqual([
      [0, 0, 0],
      [0, 1, 1],
      [1, 0, 0],
      [0, 1, 1],
    ]);
  });

  test("keeps a loop apart from the same stretch without one", () => {
    expect(usageOf(looped)[0]!.passes.slice(0, 2)).toEqual([
      [0, 0],
      [1, 3],
    ]);
  });

  test("is worked out once", () => {
    expect(usageOf(plait)).toBe(usageOf(plait));
    expect(usageOf(swapping)).not.toBe(usageOf(plait));
  });

  test.each([
    ["a plait", plait],
    ["a plait with a cord in its middle", withMiddle],
    ["cords that change places", swapping],
    ["a cord with loops", looped],
  ])("adds up to what the cords take of %s, repeat by repeat", (_, trace) => {
    const segments = distinctSegments(trace).map((segment, index) => ({ ...segment, pickup: 3 + 4 * index }));
    for (const [cord, { strands, passes }] of usageOf(trace).entries()) {
      let stitches = strands;
      for (const [repeats, inThis] of passes.entries()) {
        stitches += stitchesOver(inThis, segments);
        const whole = cordsOf([{ look: { trace, segments }, repeats, joins: [] }]);
        expect(whole[cord]!.used).toBe(stitches);
      }
    }
  });
});

test("cord stitches over stretches are counted as often as they are passed, none over those that are not counted yet", () => {
  expect(stitchesOver([2, 4], [{ pickup: 3 }, { pickup: 5 }])).toBe(26);
  expect(stitchesOver([2, 4], [{ pickup: 3 }])).toBe(6);
});

test("a text tells cord by cord what is taken before the repeats and in each", () => {
  const counts = [{ pickup: 3 }, { pickup: 5 }];
  expect(usageText(usageOf(plait), counts)).toBe("2+6+20+20+20");
  const counted = [...counts, { pickup: 4 }, { pickup: 8 }];
  expect(usageText(usageOf(withMiddle), counted)).toBe("2+6+20+20+20+20 1+4+8+8+8+8");
});

test("ways to pass over stretches that are the same in several repeats or cords are told once", () => {
  expect(distinctPasses(usageOf(plait))).toEqual([
    [2, 0],
    [0, 4],
  ]);
  expect(distinctPasses(usageOf(swapping))).toEqual([
    [0, 0, 0],
    [1, 0, 0],
    [0, 1, 1],
  ]);
});
