import { expect, test } from "vitest";
import type { FittedSection } from "../../../../src/fit/fit.ts";
import { furthestReach, tracesOf } from "../../../../src/fit/growth/growth.ts";
import type { Trace } from "../../../../src/motif/trace.ts";

const section = (left: number, right: number, repeats: number): FittedSection => {
  const trace: Trace = {
    leadRows: 4,
    repeatRows: 8,
    reach: { left, right },
    strands: [],
    folded: [],
    cables: [],
    ladders: [],
  };
  return { look: { trace } as FittedSection["look"], repeats, joins: [] };
};

test("a run of sections has a look for each of its repeats, from the bottom up", () => {
  const sections = [section(3, 3, 2), section(4, 4, 1)];
  const [narrow, wide] = sections.map(({ look }) => look.trace);
  expect(tracesOf(sections)).toEqual([narrow, narrow, wide]);
});

test("a growth reaches at each side as far as the widest of its repeats", () => {
  expect(
    furthestReach({ sections: [section(3, 6, 2), section(5, 4, 1), section(4, 5, 2)], terms: [] }),
  ).toEqual({
    left: 5,
    right: 6,
  });
});
