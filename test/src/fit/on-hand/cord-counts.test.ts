import { describe, expect, test } from "vitest";
import type { Candidate } from "../../../../src/fit/candidates.ts";
import type { FittedSegment, Look } from "../../../../src/fit/looks.ts";
import { cordPart, createCordCounts, waysByUsage } from "../../../../src/fit/on-hand/cord-counts.ts";
import type { CordMotif } from "../../../../src/motif/motif.ts";
import { distinctSegments } from "../../../../src/motif/segments.ts";
import type { Point, StrandTrace, Trace } from "../../../../src/motif/trace.ts";

const at = (needle: number, row: number): Point => ({ needle, row, rank: 0 });

const arm = (name: string, side: 1 | -1): StrandTrace => ({
  name,
  start: at(side, 0),
  leadIn: [at(3 * side, 4)],
  repeat: [at(-3 * side, 4), at(3 * side, 8)],
});

/** Two arms of one cord: a lead-in each, then two crossings in every repeat. */
const trace: Trace = {
  leadRows: 4,
  repeatRows: 8,
  reach: { left: 3, right: 3 },
  strands: [arm("left", -1), arm("right", 1)],
  folded: [["left", "right"]],
  cables: [],
  ladders: [],
};

const counted = (...pickups: readonly number[]): readonly FittedSegment[] =>
  distinctSegments(trace)
    .slice(0, pickups.length)
    .map((segment, index) => ({ ...segment, spanMm: 20, ease: 0, pickup: pickups[index]! }));

const motif = { kind: "cord", reserve: 0.15 } as CordMotif;

interface Laid {
  readonly counted?: { readonly trace: Trace; readonly segments: readonly FittedSegment[] };
  readonly used?: readonly number[];
  readonly columns?: number;
  readonly repeats?: number;
}

const layout = ({ counted: look, used, columns = 1, repeats = 2 }: Laid): Candidate =>
  ({
    place: { footing: { ...(look && { counted: look }) } },
    ...(used && { growth: { sections: [], terms: [], used } }),
    columns,
    repeats,
  }) as unknown as Candidate;

describe("cord to make for a layout", () => {
  const look = { trace, segments: counted(3, 5) };

  test("is what its look counts, with the reserve and rounded up, for each column", () => {
    const cordOf = createCordCounts();
    // 2 x (1 + 3 + 4 x 5) = 48 used in two repeats, with 15 % more 55.2.
    expect(cordOf(motif, layout({ counted: look }))).toEqual({ stitches: 56, cords: 1 });
    expect(cordOf(motif, layout({ counted: look, columns: 3 }))).toEqual({ stitches: 168, cords: 3 });
    // 2 x (1 + 3 + 6 x 5) = 68 in three, 78.2.
    expect(cordOf(motif, layout({ counted: look, repeats: 3 }))).toEqual({ stitches: 79, cords: 1 });
    expect(cordOf(motif, layout({ counted: look }))).toEqual({ stitches: 56, cords: 1 });
    expect(cordOf({ ...motif, reserve: 0 }, layout({ counted: look }))).toEqual({ stitches: 48, cords: 1 });
    expect(cordOf(motif, layout({ counted: { trace, segments: counted(4, 5) } }))).toEqual({
      stitches: 58, // 2 x (1 + 4 + 20) = 50, 57.5.
      cords: 1,
    });
  });

  test("of a motif that grows is what its way takes, each cord rounded up by itself", () => {
    // 11.5 and 23 cord stitches.
    expect(createCordCounts()(motif, layout({ used: [10, 20], columns: 2 }))).toEqual({
      stitches: 70,
      cords: 4,
    });
  });

  test("is none where its motif has no cord", () => {
    expect(createCordCounts()(motif, layout({}))).toEqual({ stitches: 0, cords: 0 });
  });

  test("is worked out once for one look and number of repeats", () => {
    let reads = 0;
    const watched = {
      get trace() {
        reads += 1;
        return trace;
      },
      segments: look.segments,
    };
    const cordOf = createCordCounts();
    cordOf(motif, layout({ counted: watched }));
    const before = reads;
    cordOf(motif, layout({ counted: watched, columns: 2 }));
    expect(reads).toBe(before);
    cordOf(motif, layout({ counted: watched, repeats: 3 }));
    expect(reads).toBeGreaterThan(before);
  });
});

test("what tells how much cord a look takes is what its cords take in every repeat, and nothing for a cable", () => {
  const look = { motif: { kind: "cord" }, trace, segments: counted(3, 5) } as unknown as Look;
  expect(cordPart(look)).toBe("2+6+20+20+20");
  expect(cordPart({ ...look, motif: { kind: "cable" } } as unknown as Look)).toBe("");
});

describe("ways to count a cord that are kept", () => {
  /** Each way costs as much as is told. */
  const kept = (
    lessIsBetter: boolean,
    keep: number,
    ways: readonly (readonly [pickups: readonly number[], cost: number])[],
  ): readonly (readonly number[])[] => {
    const counts = ways.map(([pickups]) => counted(...pickups));
    const away = (way: readonly FittedSegment[]): number => ways[counts.indexOf(way)]![1];
    return waysByUsage(lessIsBetter)(trace)(counts, keep, away).map((way) => way.map(({ pickup }) => pickup));
  };

  test("are all that take less than a cheaper one, where less is better", () => {
    expect(
      kept(true, 1, [
        [[3, 6], 2],
        [[3, 5], 1],
        [[4, 4], 3],
        [[4, 5], 4],
      ]),
    ).toEqual([
      [3, 5],
      [4, 4],
    ]);
  });

  test("are those that take another amount than a cheaper one, where less is not better", () => {
    expect(
      kept(false, 1, [
        [[3, 6], 2],
        [[3, 5], 1],
        [[3, 5], 3],
      ]),
    ).toEqual([
      [3, 5],
      [3, 6],
    ]);
  });

  test("are as many as are wanted of those that take the same", () => {
    expect(
      kept(false, 2, [
        [[3, 5], 2],
        [[3, 5], 1],
        [[3, 5], 3],
      ]),
    ).toHaveLength(2);
  });

  test("are told apart while only the first stretches are counted", () => {
    expect(
      kept(true, 1, [
        [[3], 2],
        [[4], 1],
        [[5], 3],
      ]),
    ).toEqual([[4], [3]]);
  });
});
