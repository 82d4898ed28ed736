import { describe, expect, test } from "vitest";
import type { Motif } from "../../../src/motif/motif.ts";
import { distinctSegments } from "../../../src/motif/segments.ts";
import type { Trace } from "../../../src/motif/trace.ts";
import { isProblem, traceMotif } from "../../../src/motif/trace-motif.ts";
import { garmentText } from "../../support/garment-text.ts";
import { soundGarment } from "../../support/run-garment.ts";

function traceOf(motif: string, values: Record<string, number> = {}): Trace {
  const garment = soundGarment(garmentText({ motifs: `motifs:\n  plait: ${motif}` }));
  const trace = traceMotif(garment.motifs[0] as Motif, new Map(Object.entries(values)));
  if (isProblem(trace)) throw new Error(trace.problem);
  return trace;
}

/** By needles across. */
const climbsOf = (motif: string): Record<number, number> =>
  Object.fromEntries(distinctSegments(traceOf(motif)).map(({ needles, climbs }) => [needles, climbs]));

/** Two strands that cross once in a repeat: the left one spans 5 needles, the right one 7. */
const crossing = (left: string, right: string, order = "[left, right]"): string =>
  `{ kind: cord, lead: 0, repeat: 8, order: ${order}, strands: {
      left: { start: [-3, 0], repeat: [[3, 4${left}], [-3, 8]] },
      right: { start: [4, 0], repeat: [[-4, 4${right}], [4, 8]] } } }`;

describe("what a stretch climbs over", () => {
  test("is what was hung before it in its row", () => {
    expect(climbsOf(crossing("", ""))).toEqual({ 5: 0, 7: 1 });
    expect(climbsOf(crossing("", "", "[right, left]"))).toEqual({ 5: 1, 7: 0 });
  });

  test("turns with the turns of its hangings", () => {
    const turned = climbsOf(crossing(", { turn: 1 }", ""));
    // The left strand lies over on its way out and under on its way back.
    expect(turned).toEqual({ 5: 1, 7: 1 });
  });
});

describe("a strand that goes on in the place of another", () => {
  const swapping =
    "{ kind: cord, lead: 0, repeat: 4, strands: { a: { start: [-2, 0], repeat: [[3, 4]], next: b }, b: { start: [3, 0], repeat: [[-2, 4]], next: a } } }";

  test("has the segments of both", () => {
    expect(distinctSegments(traceOf(swapping)).map(({ needles, rows }) => [needles, rows])).toEqual([[4, 4]]);
  });
});

describe("a standing loop", () => {
  test("is a segment of its own beside an eased one of the same size", () => {
    const trace = traceOf(
      "{ kind: cord, lead: 0, repeat: 4, strands: { a: { start: [1, 0], repeat: [[1, 2, { count: 9 }], [1, 4]] } } }",
    );
    expect(distinctSegments(trace).map(({ name, fixed }) => [name, fixed])).toEqual([
      ["loop", 9],
      ["run", undefined],
    ]);
  });
});
