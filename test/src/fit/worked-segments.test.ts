import { beforeAll, describe, expect, test } from "vitest";
import type { FittedSection } from "../../../src/fit/fit.ts";
import type { Track } from "../../../src/fit/growth/tracks.ts";
import { workedSegments } from "../../../src/fit/worked-segments.ts";
import type { Point, Trace } from "../../../src/motif/trace.ts";
import { wedge } from "../../support/growing-wedge.ts";

const named = (sections: readonly FittedSection[]): readonly (readonly string[])[] =>
  workedSegments(sections).map((worked) => worked.map(({ name, needles }) => `${name} ${needles}`));

describe("of a plait that widens", () => {
  let track: Track;
  beforeAll(() => {
    [track] = wedge().tracks as [Track];
  });

  /** So many repeats with the look of an index, after that of another. */
  const section = (at: number, repeats: number, below = at): FittedSection => {
    const [look, before] = [track.looks[at]!, track.looks[below]!];
    return { look, repeats, joins: track.stepTo(look, before)!.joins };
  };

  test("the lead-in is worked in the first section only, a join where it is come to", () => {
    expect(named([section(0, 2), section(1, 1, 0), section(2, 2, 1)])).toEqual([
      ["lead-in 2", "crossing 5"],
      ["join 6", "crossing 7"],
      ["join 8", "crossing 9"],
    ]);
  });

  test("no more than the lead-in is worked where there is no repeat", () => {
    expect(named([section(0, 0)])).toEqual([["lead-in 2"]]);
  });

  test("the same stretch of a section below does not count for the one above", () => {
    // The join from 3 to 4 is 6 needles, back to 3 it is as many.
    expect(named([section(0, 1), section(1, 1, 0), section(0, 1, 1)])).toEqual([
      ["lead-in 2", "crossing 5"],
      ["join 6", "crossing 7"],
      ["join 6", "crossing 5"],
    ]);
  });
});

test("a loop is told from the same stretch without one", () => {
  const at = (needle: number, row: number, count?: number): Point => ({
    needle,
    row,
    rank: 0,
    ...(count !== undefined && { count }),
  });
  const trace: Trace = {
    leadRows: 0,
    repeatRows: 4,
    reach: { left: 1, right: 1 },
    strands: [{ name: "cord", start: at(-1, 0), leadIn: [], repeat: [at(1, 2, 10), at(-1, 4)] }],
    folded: [],
    cables: [],
    ladders: [],
  };
  const stretch = { rows: 2, climbs: 0, spanMm: 10, pickup: 10, ease: 0 };
  const segments = [
    { ...stretch, name: "loop", needles: 1, fixed: 10 },
    { ...stretch, name: "run", needles: 1 },
    { ...stretch, name: "another loop", needles: 1, fixed: 12 },
    { ...stretch, name: "longer", needles: 1, rows: 4 },
  ];
  const look = { trace, segments } as unknown as FittedSection["look"];
  expect(named([{ look, repeats: 1, joins: [] }])).toEqual([["loop 1", "run 1"]]);
});

test("nothing is worked where there is no section, nor of a motif without a cord", () => {
  expect(workedSegments([])).toEqual([]);
  const trace = { strands: [], cables: [], leadRows: 0, repeatRows: 4 } as unknown as Trace;
  const look = { trace, segments: [] } as unknown as FittedSection["look"];
  expect(workedSegments([{ look, repeats: 2, joins: [] }])).toEqual([[]]);
});
